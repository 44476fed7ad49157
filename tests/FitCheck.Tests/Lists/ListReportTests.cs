using System.Globalization;
using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Findings;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Lists;
using FitCheck.QuoteImport;
using FitCheck.Reports.Format;
using FitCheck.Reports.Lists;
using FitCheck.Tests.Reports;
using NJsonSchema;
using Xunit;

namespace FitCheck.Tests.Lists;

public sealed class ListReportTests
{
    public static TheoryData<string> Formats => [.. ListReports.Formats];

    public static TheoryData<string> Formulas => ["=1+1", "+49", "-2", "@cmd", "\t=x", "say \"hi\", twice\n"];

    [Theory]
    [MemberData(nameof(HostileTexts.All), MemberType = typeof(HostileTexts))]
    [MemberData(nameof(Formulas))]
    public void A_table_holds_every_name_and_no_formula(string name)
    {
        var problems = new ProblemList();
        var rows = CsvText.Rows(new SourceText("list.csv", Written("csv", Sample(name))), problems);

        Assert.Empty(problems.Sorted());
        Assert.Equal(3, rows.Count);
        Assert.All(rows, r => Assert.Equal(14, r.Count));
        Assert.All(rows.Skip(1).SelectMany(r => r), cell => Assert.False(cell.Value is ['=' or '+' or '-' or '@', ..], cell.Value));
        Assert.Equal(["12.50", "25.00", "EUR"], rows[1].Skip(9).Take(3).Select(c => c.Value));
    }

    [Theory]
    [MemberData(nameof(HostileTexts.All), MemberType = typeof(HostileTexts))]
    [MemberData(nameof(Formulas))]
    public void A_hostile_name_reaches_no_browser_and_no_terminal(string name)
    {
        var html = Written("html", Sample(name));
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<img", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("</details>", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain(Written("text", Sample(name)), c => char.IsControl(c) && c != '\n');
        Assert.All(Written("markdown", Sample(name)).Split('\n')
            .Where(l => l.StartsWith("| ", StringComparison.Ordinal) && !l.Contains("**", StringComparison.Ordinal)),
            l => Assert.Equal(6, l.Replace("\\|", "", StringComparison.Ordinal).Count(c => c == '|')));
    }

    [Theory]
    [MemberData(nameof(Formats))]
    public void Every_culture_is_told_the_same(string format)
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
            var plain = Written(format, Sample("Part"));
            CultureInfo.CurrentCulture = CommaCulture.WithComma;
            Assert.Equal(plain, Written(format, Sample("Part")));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public async Task The_data_keep_the_published_schema()
    {
        var schema =
            await JsonSchema.FromJsonAsync(
                File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "reports", "schema", "list.schema.json")));
        Assert.Empty(schema.Validate(Written("json", Sample("Part"))));
        Assert.Empty(schema.Validate(Written("json", Sample("Part") with { Tax = Tax.NotAsked, Builds = [] })));
        Assert.NotEmpty(
            schema.Validate(Written("json", Sample("Part")).Replace("\"packs\": 2", "\"packs\": \"2\"", StringComparison.Ordinal)));
    }

    [Fact]
    public void An_empty_list_still_has_its_columns()
    {
        var empty = Sample("Part").Builds[0] with { Lines = [], Asked = [] };
        Assert.StartsWith("build,listed_by,part,name,", Written("csv", Sample("Part") with { Builds = [empty] }), StringComparison.Ordinal);
    }

    [Fact]
    public void The_text_says_apart_what_rules_ask_for_and_what_is_tax()
    {
        var text = Written("text", Sample("Part"));

        Assert.Contains("2 packs of 2 at 12.50 EUR", text, StringComparison.Ordinal);
        Assert.Contains("asked for by list/some-rule (Some title): The whole build", text, StringComparison.Ordinal);
        Assert.Matches("of it 19 % tax +3.99 EUR", text); // by hand: 25.00 × 19/119 = 3.9916
        Assert.Matches("Subtotal +4.90 EUR", text);
        Assert.Matches("Total +29.90 EUR", text); // 25.00 + 4.90
        Assert.Contains("Budget 27.00 EUR: 2.00 EUR left by the build's own list; 2.90 EUR over with what the rules ask for.", text,
            StringComparison.Ordinal);
    }

    [Fact]
    public void With_tax_on_top_the_budget_is_held_against_what_is_paid()
    {
        var text = Written("text", Sample("Part") with { Tax = new Tax(19, IsAdded: true) });

        Assert.Matches("with tax +29.75 EUR", text); // by hand: 25.00 × 1.19
        // 29.90 × 1.19 = 35.581 → 35.58
        Assert.Contains("Budget 27.00 EUR: 2.75 EUR over by the build's own list; 8.58 EUR over", text, StringComparison.Ordinal);
    }

    private static string Written(string format, ListResult result)
    {
        using var text = new StringWriter { NewLine = "\n" };
        ListReports.Find(format)!.Write(result, ReportOptions.Default, text);
        return text.ToString();
    }

    private static ListResult Sample(string name) => new("fitcheck 0.1.0", "sha256:0", new Tax(19, IsAdded: false),
    [
        new PartsList
        {
            File = "build.yaml",
            Name = name,
            VehicleName = name,
            Budget = new Money(27, "EUR"),
            Lines = [new ListLine("part-a", name, 3, 2, 2, new Money(12.50m, "EUR"), new Money(25, "EUR"), "to-order") { LeftPieces = 1 }],
            Asked = [new AskedLine(
                new ListLine("part-b", name, 1, 1, 1, new Money(4.90m, "EUR"), new Money(4.90m, "EUR"), "current") { LeftMetres = 1.25 },
                [new Ask("list/some-rule", "Some title", Status.Warn, "build", "The whole build", "heat-shrink")])],
            Unanswered = [new Ask("list/other-rule", "Other title", Status.Fail, "build", name, "fuse")],
        },
    ]);
}
