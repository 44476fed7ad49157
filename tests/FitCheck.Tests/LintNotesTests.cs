using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Foundation;
using Xunit;

namespace FitCheck.Tests;

/// <summary>
/// Notes of earlier runs may only save time: lint with them says what lint without them says, whatever was changed, torn or moved in
/// between.
/// </summary>
public sealed class LintNotesTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly Random _random = new(20_261_125);

    public LintNotesTests()
    {
        foreach (var kind in FitCheck.Catalog.Kinds.All)
        {
            foreach (var file in Directory.GetFiles(RepositoryRoot.Of("catalog", kind.Folder), "*.yaml"))
                _folder.Write($"catalog/{kind.Folder}/{Path.GetFileName(file)}", File.ReadAllText(file));
        }
    }

    public void Dispose() => _folder.Dispose();

    private string Notes => Assert.Single(Directory.GetFiles(_folder.Of("cache"), "*.notes"));

    [Fact]
    public void Edits_of_all_sorts_are_told_as_if_nothing_were_remembered()
    {
        AssertSame();
        var files = Directory.GetFiles(_folder.Of("catalog"), "*.yaml", SearchOption.AllDirectories).Order(StringComparer.Ordinal)
            .ToArray();
        for (var round = 0; round < 25; round++)
        {
            var file = files[_random.Next(files.Length)];
            var lines = File.Exists(file) ? File.ReadAllLines(file).ToList() : ["id: back-again"];
            switch (round % 5)
            {
                case 0: lines.RemoveAt(_random.Next(lines.Count)); break;
                case 1: lines.Insert(_random.Next(lines.Count), "# a line more"); break;
                case 2: lines[_random.Next(lines.Count)] += "x"; break;
                case 3: File.Delete(file); break;
                default: file = Path.ChangeExtension(file, $"{round}.yaml"); break;
            }
            if (round % 5 != 3)
                File.WriteAllLines(file, lines);
            AssertSame();
        }
    }

    [Fact]
    public void An_edit_that_leaves_size_and_time_alone_is_seen()
    {
        var file = _folder.Of("catalog/cups/cup-45-tansy.yaml");
        AssertSame();
        var text = File.ReadAllText(file);
        var time = File.GetLastWriteTimeUtc(file);
        File.WriteAllText(file, text.Replace("hole: 45 mm", "hole: 45 mn", StringComparison.Ordinal));
        File.SetLastWriteTimeUtc(file, time);

        Assert.Contains(AssertSame(), p => p.Contains("45 mn", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("drivers/orrin-w165-4.yaml", "type: woofer", "type: tweeter", "data/set-member-of-another-type", "orrin-set-165.yaml")]
    [InlineData("sources/merrow-r4.yaml", "rear-left, ", "", "data/channel-not-of-the-source", "tansy-hatch.yaml")]
    public void What_another_entry_takes_for_granted_is_asked_again_when_it_changes(string file, string was, string now, string rule,
        string told)
    {
        AssertSame();
        var path = _folder.Of("catalog/" + file);
        var text = File.ReadAllText(path);
        Assert.Contains(was, text, StringComparison.Ordinal);
        File.WriteAllText(path, text.Replace(was, now, StringComparison.Ordinal));

        Assert.Contains(AssertSame(), p => p.Contains(rule, StringComparison.Ordinal) && p.Contains(told, StringComparison.Ordinal));
    }

    [Fact]
    public void Torn_and_damaged_notes_are_not_believed()
    {
        Break();
        var expected = AssertSame();
        var whole = File.ReadAllBytes(Notes);
        for (var round = 0; round < 20; round++)
        {
            var bytes = whole.ToArray();
            if (round % 2 == 0)
                bytes = bytes[..(round == 0 ? 0 : _random.Next(bytes.Length))];
            else
                bytes[_random.Next(bytes.Length)] ^= (byte)(1 << _random.Next(8));
            File.WriteAllBytes(Notes, bytes);
            Assert.Equal(expected, Told(ValidationCache.In(_folder.Of("cache"))));
        }
    }

    [Fact]
    public void Entries_of_a_list_keep_their_places_when_they_move()
    {
        var list = string.Concat(new[] { "cup-45-tansy", "cup-43-corvid" }.Select(id =>
        {
            var lines = File.ReadAllLines(_folder.Of($"catalog/cups/{id}.yaml")).Where(l => !l.StartsWith('#')).ToArray();
            File.Delete(_folder.Of($"catalog/cups/{id}.yaml"));
            return "- " + string.Join("\n  ", lines) + "\n";
        }));
        var file = _folder.Write("catalog/cups/several.yaml",
            list.Replace("tansy-hatch", "tansy-hutch", StringComparison.Ordinal)
                .Replace("material: abs", "material: clay", StringComparison.Ordinal));
        var first = Assert.Single(AssertSame(), p => p.Contains("tansy-hutch", StringComparison.Ordinal));
        var line = File.ReadAllLines(file).ToList().FindIndex(l => l.Contains("tansy-hutch", StringComparison.Ordinal)) + 1;
        Assert.Contains($"several.yaml:{line}:", first, StringComparison.Ordinal);

        File.WriteAllText(file, "# moved\n\n" + File.ReadAllText(file));

        Assert.Contains($"several.yaml:{line + 2}:", Assert.Single(AssertSame(), p => p.Contains("tansy-hutch", StringComparison.Ordinal)),
            StringComparison.Ordinal);
    }

    [Fact]
    public void An_id_twice_in_a_list_is_told_with_the_place_of_the_first()
    {
        var item = "- "
            + File.ReadAllText(_folder.Of("catalog/cups/cup-45-tansy.yaml")).Split('\n', 2)[1].TrimEnd()
            .Replace("\n", "\n  ", StringComparison.Ordinal) + "\n";
        File.Delete(_folder.Of("catalog/cups/cup-45-tansy.yaml"));
        var file = _folder.Write("catalog/cups/several.yaml", item + item).Replace('\\', '/');

        Assert.Contains(AssertSame(),
            p => p.StartsWith($"{file}:{item.Count(c => c == (char)10) + 1}:7: error: ", StringComparison.Ordinal)
                && p.Contains("cup-45-tansy", StringComparison.Ordinal));
    }

    [Fact]
    public void Overlays_that_come_and_go_are_told_as_if_nothing_were_remembered()
    {
        var own = _folder.Of("catalog");
        var shop = Directory.CreateDirectory(_folder.Of("shop")).FullName;
        string[] folders = [own, shop];
        AssertSame(folders);
        foreach (var file in Directory.GetFiles(Path.Combine(own, "drivers"), "*.yaml").Order(StringComparer.Ordinal).Take(6))
        {
            var other = _folder.Write($"shop/drivers/{Path.GetFileName(file)}",
                File.ReadAllText(file).Replace("depth: ", "depth: 1", StringComparison.Ordinal));
            AssertSame(folders);
            File.AppendAllText(other, "# again\n");
            AssertSame(folders);
            File.Delete(other);
            AssertSame(folders);
        }
        File.Move(Path.Combine(own, "cups", "cup-45-tansy.yaml"), _folder.Write("shop/cups/cup-45-tansy.yaml", ""), overwrite: true);
        AssertSame(folders);
        AssertSame(own);
    }

    [Fact]
    public void Files_that_nobody_reads_are_told()
    {
        _folder.Write("catalog/drivers/forgotten.yml", "id: forgotten\n");
        _folder.Write("catalog/driver/misplaced.yaml", "id: misplaced\n");
        _folder.Write("catalog/lost.yaml", "id: lost\n");

        var told = AssertSame();

        Assert.Contains(told,
            p => p.EndsWith("catalog/driver: warning: not read: no kind of entry has a folder of this name; did you mean `drivers`?",
                StringComparison.Ordinal));
        Assert.Contains(told,
            p => p.EndsWith("forgotten.yml: warning: not read: the name of a catalog file ends in `.yaml`", StringComparison.Ordinal));
        Assert.Contains(told,
            p => p.EndsWith("lost.yaml: warning: not read: entries stand in the folder of their kind", StringComparison.Ordinal));
    }

    [Fact]
    public void A_name_that_goes_and_comes_back_is_missed_by_entries_that_did_not_change()
    {
        var vehicle = _folder.Of("catalog/vehicles/tansy-hatch.yaml");
        var text = File.ReadAllText(vehicle);
        Assert.DoesNotContain(AssertSame(), p => p.Contains("tansy-hatch", StringComparison.Ordinal));

        File.Delete(vehicle);
        Assert.Contains(AssertSame(),
            p => p.Contains("no vehicle `tansy-hatch`", StringComparison.Ordinal) || p.Contains("tansy-hatch", StringComparison.Ordinal));

        File.WriteAllText(vehicle, text.Replace("id: front-door-left", "id: front-door-port", StringComparison.Ordinal));
        Assert.Contains(AssertSame(), p => p.Contains("front-door-left", StringComparison.Ordinal));

        File.WriteAllText(vehicle, text);
        Assert.DoesNotContain(AssertSame(), p => p.Contains("tansy-hatch", StringComparison.Ordinal));
    }

    [Fact]
    public void Runs_that_are_killed_at_once_or_side_by_side_leave_nothing_half_written()
    {
        Break();
        var expected = Cli.Run.Of(_folder.Path, "lint", "--catalog", "catalog", "--rules", RepositoryRoot.Of("rules"));
        Assert.Equal(2, expected.Status);
        for (var round = 0; round < 6; round++)
        {
            File.AppendAllText(_folder.Of("catalog/cups/cup-45-tansy.yaml"), "# again\n");
            var runs = Enumerable.Range(0, 2)
                .Select(_ => Cli.Run.Start(_folder.Path, "lint", "--catalog", "catalog", "--rules", RepositoryRoot.Of("rules"))).ToList();
            Thread.Sleep(_random.Next(50, 1500));
            runs.ForEach(r =>
            {
                r.Kill();
                r.WaitForExit();
                r.Dispose();
            });
        }
        var together = Enumerable.Range(0, 2)
            .Select(_ => Task.Run(() => Cli.Run.Of(_folder.Path, "lint", "--catalog", "catalog", "--rules", RepositoryRoot.Of("rules"))))
            .ToArray();
        Assert.All(together, t => Assert.Equal(expected, t.Result));
    }

    private void Break()
    {
        File.AppendAllText(_folder.Of("catalog/adapters/plate-100-in-130-8.yaml"), "colour: red\n");
        File.WriteAllText(_folder.Of("catalog/sets/orrin-set-165.yaml"),
            File.ReadAllText(_folder.Of("catalog/sets/orrin-set-165.yaml"))
                .Replace("woofer: orrin-w165-4", "woofer: orrin-w165-5", StringComparison.Ordinal));
    }

    private IReadOnlyList<string> AssertSame(params string[] catalog)
    {
        var expected = Told(ValidationCache.Nothing, catalog);
        for (var run = 0; run < 2; run++)
            Assert.Equal(string.Join('\n', expected), string.Join('\n', Told(ValidationCache.In(_folder.Of("cache")), catalog)));
        return expected;
    }

    private IReadOnlyList<string> Told(ValidationCache cache, params string[] catalog) =>
        [.. Lint.Run([], new Folders(catalog.Length > 0 ? catalog : [_folder.Of("catalog")], [RepositoryRoot.Of("rules")]),
            cache).Problems.Select(p => p.ToString())];
}
