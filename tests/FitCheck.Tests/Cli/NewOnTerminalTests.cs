using System.Diagnostics;
using System.Text;
using System.Text.RegularExpressions;
using Xunit;

namespace FitCheck.Tests.Cli;

/// <summary>`fitcheck new build` on a pseudo-terminal, which `script` of util-linux makes.</summary>
public sealed partial class NewOnTerminalTests : IDisposable
{
    private static readonly string Program = Path.Combine(AppContext.BaseDirectory, "fitcheck.dll");
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Names_are_typed_and_chosen_and_a_checked_build_is_left()
    {
        if (!OperatingSystem.IsLinux())
            return; // `script` takes other options elsewhere
        using var terminal = new Terminal(_folder.Path, $"dotnet {Program} new build -o mine.yaml");
        terminal.Answer("Which vehicle?", "tansy\r");
        // The first two are marked already; the third is the rear doors.
        terminal.Answer("Which places get new drivers?", " \e[B \e[B \r");
        terminal.Answer("Which work do you accept?", "\r");
        terminal.Answer("Which driver: Rear door", "C165\r");
        terminal.Answer("Which spacer", "\r");
        terminal.Answer("Which harness adapter", "\r");
        terminal.Answer("Which amplifier", "radio does\r");
        terminal.Answer("What may it cost", "180.00 EUR\r");
        terminal.Answer("Take these changes?", "\r");
        terminal.WaitFor("Go on with: fitcheck check mine.yaml");

        Assert.Equal(0, terminal.Status());
        var yaml = File.ReadAllText(_folder.Of("mine.yaml"));
        Assert.Contains("vehicle: tansy-hatch", yaml, StringComparison.Ordinal);
        Assert.Contains("[rear-door-left, rear-door-right]", yaml, StringComparison.Ordinal);
        Assert.Contains("budget: 180.00 EUR", yaml, StringComparison.Ordinal);
        Assert.InRange(Run.Of(_folder.Path, "check", "mine.yaml").Status, 0, 1);
    }

    [Fact]
    public void Sixty_columns_and_twelve_lines_are_enough_and_Escape_goes_back()
    {
        if (!OperatingSystem.IsLinux())
            return;
        using var terminal = new Terminal(_folder.Path, $"stty cols 60 rows 12; dotnet {Program} new build -o mine.yaml --catalog default");
        terminal.Answer("Which vehicle?", "tansy\r");
        terminal.Answer("Which places get new drivers?", "\r");
        terminal.Answer("Which work do you accept?", "\e");
        terminal.Answer("Which places get new drivers?", "\r");
        terminal.Answer("Which work do you accept?", "\r");
        terminal.Answer("Which driver or set", "nothing like it");
        terminal.Answer("Nothing here has", new string('\u007f', "nothing like it".Length) + "\r");
        terminal.Answer("Which spacer: Front door, left", "\r");
        terminal.Answer("Which spacer: Front door, right", "\r");
        terminal.Answer("Which harness adapter: Front door", "\r");
        terminal.Answer("Which cup", "\r");
        terminal.Answer("Which amplifier", "\r");
        terminal.Answer("What may it cost", "\r");
        terminal.Answer("Take these changes?", "\r");
        terminal.WaitFor("Go on with: fitcheck check mine.yaml --catalog default");

        Assert.Equal(0, terminal.Status());
        // A list is drawn over by going up as many lines as it has: one that the screen broke in two, or more lines than it shows, would
        // leave shreds.
        var drawn = terminal.Seen.Split("\e[?25l").Skip(1).SelectMany(d => d.Split("\e[?25h")[0].Split("\e[J")).ToList();
        Assert.True(drawn.Count > 10);
        Assert.All(drawn, d => Assert.InRange(d.Split('\n').Length, 1, 12));
        Assert.All(drawn.SelectMany(d => d.Split('\n')), l => Assert.InRange(Escapes().Replace(l, "").TrimEnd('\r').Length, 0, 59));
        Assert.Equal(0, Run.Of(_folder.Path, "check", "mine.yaml").Status);
    }

    [GeneratedRegex(@"\e\[[0-9;?]*[A-Za-z]")]
    private static partial Regex Escapes();

    [Fact]
    public void Who_breaks_off_leaves_nothing()
    {
        if (!OperatingSystem.IsLinux())
            return;
        using var terminal = new Terminal(_folder.Path, $"dotnet {Program} new build -o mine.yaml");
        terminal.Answer("Which vehicle?", "\u0003");

        Assert.NotEqual(0, terminal.Status());
        Assert.DoesNotContain(Directory.GetFiles(_folder.Path), f => f.Contains("mine", StringComparison.Ordinal));
        Assert.Contains("\e[?25h", terminal.Seen, StringComparison.Ordinal); // the cursor is back
    }

    [Fact]
    public void Readings_are_asked_for_and_written_into_the_build()
    {
        if (!OperatingSystem.IsLinux())
            return;
        _folder.Write("mine.yaml", File.ReadAllText(RepositoryRoot.Of("catalog", "builds", "alder-missing-data.yaml")));
        using var terminal = new Terminal(_folder.Path, $"dotnet {Program} measure mine.yaml");
        terminal.Answer("Rated impedance of the factory driver (", "\r");
        terminal.Answer("Polarity of the factory wires (", "\r");
        terminal.Answer("Distance from the factory plug to the driver's terminals (", "3 1/2 in\r");
        terminal.Answer("Diameter of the recess or trim ring (", "far\r"); // no length: told, and asked again
        terminal.Answer("expected a length", "none\r");
        terminal.Answer("Diameter of the hole in the panel (", "stop\r");
        terminal.WaitFor("2 readings are written.");

        Assert.Equal(1, terminal.Status()); // something is still open
        var yaml = File.ReadAllText(_folder.Of("mine.yaml"));
        Assert.Contains("of: connector.distance, value: 3 1/2 in, tolerance: 0.5 mm, on: ", yaml, StringComparison.Ordinal);
        Assert.Contains("of: mounting.recess, value: none, on: ", yaml, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_terminal_it_prints_the_starter_as_ever() =>
        Assert.Equal(File.ReadAllText(RepositoryRoot.Of("catalog", "starters", "build.yaml")), Run.Of(_folder.Path, "new", "build").Out);

    private sealed class Terminal : IDisposable
    {
        private readonly Process _process;
        private readonly StringBuilder _seen = new();
        private readonly Thread _reader;
        private int _read;

        public Terminal(string folder, string command)
        {
            // In the background of a shell, an interruption is ignored and so would be by what is started here.
            var start = new ProcessStartInfo("env",
                ["--default-signal=INT", "script", "-qefc", command, "/dev/null"])
            {
                WorkingDirectory = folder,
                RedirectStandardInput = true,
                RedirectStandardOutput = true,
                UseShellExecute = false
            };
            start.Environment["FITCHECK_CACHE"] = Path.Combine(folder, "cache");
            start.Environment["TERM"] = "xterm-256color";
            _process = Process.Start(start)!;
            _reader = new Thread(Read) { IsBackground = true };
            _reader.Start();
        }

        public string Seen
        {
            get
            {
                lock (_seen)
                    return _seen.ToString();
            }
        }

        public void Answer(string question, string keys)
        {
            WaitFor(question);
            _process.StandardInput.Write(keys);
            _process.StandardInput.Flush();
        }

        public void WaitFor(string text)
        {
            var until = Stopwatch.StartNew();
            while (until.Elapsed < Patience)
            {
                var at = Seen.IndexOf(text, _read, StringComparison.Ordinal);
                if (at >= 0)
                {
                    _read = at + text.Length;
                    return;
                }
                if (_process.HasExited && !_reader.IsAlive)
                    break;
                Thread.Sleep(20);
            }
            Assert.Fail($"The terminal never showed `{text}`. It showed:\n{Seen[_read..]}");
        }

        /// <summary>Of the program that has ended, with all that it said read.</summary>
        public int Status()
        {
            Assert.True(_process.WaitForExit(Patience) && _reader.Join(Patience), $"The program does not end. It showed:\n{Seen}");
            return _process.ExitCode;
        }

        public void Dispose()
        {
            if (!_process.HasExited)
                _process.Kill(entireProcessTree: true);
            // What is read from must not be taken from under the reader: an exception on its thread ends the whole run.
            if (_reader.Join(Patience))
                _process.Dispose();
        }

        // Bytes as they come. A StreamReader whose buffer was once filled waits for more before it hands on the rest: a question, while the
        // program waits for its answer.
        private void Read()
        {
            var (bytes, letters, decoder) = (new byte[1024], new char[1028], Encoding.UTF8.GetDecoder());
            var output = _process.StandardOutput.BaseStream;
            int count;
            while ((count = output.Read(bytes)) > 0)
            {
                var length = decoder.GetChars(bytes, 0, count, letters, 0);
                lock (_seen)
                    _seen.Append(letters, 0, length);
            }
        }
    }
}
