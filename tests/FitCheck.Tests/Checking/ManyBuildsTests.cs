using System.Collections;
using System.Runtime.CompilerServices;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Physics.Quantities;
using FitCheck.Reports;
using FitCheck.Reports.Format;
using Xunit;

namespace FitCheck.Tests.Checking;

/// <summary>However many builds there are, one at a time is in memory, and what is told is what is told of few.</summary>
public sealed class ManyBuildsTests
{
    private static readonly string[] Files =
        [.. Directory.GetFiles(RepositoryRoot.Of("catalog", "builds"), "*.yaml").Order(StringComparer.Ordinal).Take(12)];

    private static readonly Checker Open = OpenCheckers.OfRepository;

    [Fact]
    public void What_was_judged_is_let_go()
    {
        var result = Asked(most: 3);
        var judged = References(result);
        GC.Collect();

        Assert.Equal(Files.Length, judged.Count);
        Assert.InRange(judged.Count(j => j.TryGetTarget(out _)), 0, 1);
        GC.KeepAlive(result);
    }

    // The formats that a run over a whole shop writes; a page is for a few builds and keeps what it draws.
    [Theory]
    [InlineData("text")]
    [InlineData("json")]
    [InlineData("junit")]
    [InlineData("markdown")]
    public void A_format_holds_no_build_that_it_has_told(string format)
    {
        var builds = new Passing(Asked(most: int.MaxValue).Builds);
        ReportList.Find(format)!.Write(Asked(most: int.MaxValue) with { Builds = builds }, ReportOptions.Default, TextWriter.Null);

        Assert.InRange(builds.Given, Files.Length, int.MaxValue);
        Assert.InRange(builds.MostAlive, 1, 3);
    }

    // Markdown is a comment of bounded length, which is laid out first.
    [Theory]
    [InlineData("text")]
    [InlineData("json")]
    [InlineData("junit")]
    public void Most_of_a_report_is_on_its_way_before_the_last_build_is_asked_for(string format)
    {
        using var output = new StringWriter();
        var builds = new Passing(Asked(most: int.MaxValue).Builds) { Length = () => output.GetStringBuilder().Length };
        ReportList.Find(format)!.Write(Asked(most: int.MaxValue) with { Builds = builds }, ReportOptions.Default, output);

        Assert.InRange(builds.ToldBefore, output.GetStringBuilder().Length / 2, int.MaxValue);
    }

    [Theory]
    [InlineData("text")]
    [InlineData("json")]
    [InlineData("junit")]
    [InlineData("markdown")]
    [InlineData("sarif")]
    [InlineData("github")]
    [InlineData("html")]
    public void One_by_one_the_same_is_told(string format)
    {
        Assert.Equal(Told(Asked(most: int.MaxValue), format), Told(Asked(most: 3), format));
        Assert.Equal(Asked(most: int.MaxValue).Verdict, Asked(most: 3).Verdict);
    }

    [Fact]
    public void Units_are_those_of_the_question_also_when_the_answer_is_read_later()
    {
        CheckResult inches;
        using (Lengths.Asked(LengthUnits.Inch))
            inches = Asked(most: 3);
        Assert.All(inches.Builds, b => Assert.Equal(LengthUnits.Inch, b.Lengths));
    }

    [Fact]
    public void All_that_is_wrong_is_told_at_once()
    {
        BuildSource[] sources =
            [.. BuildSource.Files(Files), BuildSource.Text("a.yaml", "kind: build\n"), BuildSource.Text("b.yaml", "- 1\n")];
        var few = Open.Check(sources);
        var many = Open.Check(sources, new CheckOptions { Most = 3 });

        Assert.Null(many.Result);
        Assert.NotEmpty(few.Problems);
        Assert.Equal(few.Problems.Select(p => p.ToString()), many.Problems.Select(p => p.ToString()));
    }

    private static CheckResult Asked(int most) => Open.Check(BuildSource.Files(Files), new CheckOptions { Most = most }).Result!;

    private static string Told(CheckResult result, string format)
    {
        using var text = new StringWriter();
        ReportList.Find(format)!.Write(result, ReportOptions.Default, text);
        return text.ToString();
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static List<WeakReference<BuildResult>> References(CheckResult result) =>
        [.. result.Builds.Select(b => new WeakReference<BuildResult>(b))];

    /// <summary>Gives another object each time, and counts how many of them somebody still holds.</summary>
    private sealed class Passing(IReadOnlyList<BuildResult> from) : IReadOnlyList<BuildResult>
    {
        private readonly List<WeakReference<BuildResult>> _given = [];

        public int Count => from.Count;

        public int Given => _given.Count;

        public Func<int> Length { get; init; } = () => 0;

        /// <summary>How much was told when the last one was asked for.</summary>
        public int ToldBefore { get; private set; }

        public int MostAlive { get; private set; }

        public BuildResult this[int index]
        {
            get
            {
                ToldBefore = Length();
                GC.Collect();
                MostAlive = Math.Max(MostAlive, Alive() + 1);
                return Another(index);
            }
        }

        public IEnumerator<BuildResult> GetEnumerator()
        {
            for (var i = 0; i < Count; i++)
                yield return this[i];
        }

        IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

        [MethodImpl(MethodImplOptions.NoInlining)]
        private int Alive() => _given.Count(g => g.TryGetTarget(out _));

        [MethodImpl(MethodImplOptions.NoInlining)]
        private BuildResult Another(int index)
        {
            var other = from[index] with { };
            _given.Add(new(other));
            return other;
        }
    }
}
