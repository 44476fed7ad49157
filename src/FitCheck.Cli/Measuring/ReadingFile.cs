using System.Text;
using FitCheck.Cli.Output;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;

namespace FitCheck.Cli.Measuring;

/// <summary>The file of a build into which readings go: itself, or another one.</summary>
internal sealed class ReadingFile
{
    private const char Mark = '\uFEFF';

    private readonly string _file;
    private readonly string _mark;
    // What the file has, as far as this knows; null where another one is replaced by wish.
    private byte[]? _bytes;
    private bool _isNew;

    private ReadingFile(string file, string text, byte[] bytes, bool isNew, bool isItself)
    {
        (_file, _isNew) = (file, isNew);
        _mark = bytes is [0xEF, 0xBB, 0xBF, ..] ? Mark.ToString() : "";
        _bytes = isItself ? bytes : null;
        Text = text;
    }

    /// <summary>What is written.</summary>
    public string Name => _file;

    /// <summary>The text that was read.</summary>
    public string Text { get; }

    /// <summary>Reads the build; null with a sentence where that can't be, or nothing could be written.</summary>
    public static ReadingFile? Open(string build, string? target, bool replaces, out string? wrong)
    {
        var problems = new ProblemList();
        wrong = target is null ? OutputFile.Link(build) : null;
        if (wrong is not null)
            return null;
        if (InputFile.Bytes(build, build, problems) is not { } bytes || SourceText.Decode(build, bytes, problems) is not { } source)
        {
            wrong = problems.All.Count > 0 ? problems.All[0].ToString() : $"{build} can't be read";
            return null;
        }
        return new ReadingFile(target ?? build, source.Text, bytes, isNew: target is not null && !replaces, isItself: target is null);
    }

    /// <summary>Writes the text whole or not at all; a sentence why not. Who changed the file in between keeps their change.</summary>
    public string? Keep(string text)
    {
        var bytes = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false).GetBytes(_mark + text);
        if (_isNew)
        {
            if (OutputFile.New(_file, _mark + text) is { } failed)
                return failed;
            (_isNew, _bytes) = (false, bytes);
            return null;
        }
        if (IsChanged())
            return $"{_file} was changed by somebody else in the meantime; it is kept as it is";
        if (OutputFile.Edited(_file, bytes) is { } refused)
            return refused;
        _bytes = bytes;
        return null;
    }

    private bool IsChanged() =>
        _bytes is not null && File.Exists(_file) && InputFile.Bytes(_file, _file, new ProblemList())
            is { } now && !now.AsSpan().SequenceEqual(_bytes);
}
