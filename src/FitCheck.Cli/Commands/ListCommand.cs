using System.CommandLine;
using FitCheck.Cli.Output;
using FitCheck.Evaluation;
using FitCheck.Foundation;
using FitCheck.Lists;
using FitCheck.Physics.Quantities;
using FitCheck.Reports.Format;
using FitCheck.Reports.Lists;

namespace FitCheck.Cli.Commands;

/// <summary>`fitcheck list BUILD…`</summary>
internal static class ListCommand
{
    public static Command Create()
    {
        var builds = new Argument<string[]>("BUILD")
        {
            HelpName = "BUILD",
            Description = "Build files whose parts are listed; with --vehicle, sellers' lists",
            Arity = ArgumentArity.OneOrMore
        };
        var tax = new Option<string?>(
            "--tax")
        {
            Description = "Tax in per cent, such as 19 or 8.1: show how much of the prices, which include it, is tax",
            HelpName = "RATE"
        };
        var net = new Option<bool>("--net") { Description = "The prices are without tax: add it to the sums; needs --tax" };
        var targets = new TargetOptions(ListReports.Formats);
        var quote = new QuoteOptions("The files are sellers' lists for this vehicle");
        var common = new CommonOptions();
        var command = new Command("list", "List the parts to buy, what they cost, and what the rules miss on the list")
        {
            builds, tax, net, targets.Formats, targets.Outputs, common.For, common.Catalog, common.Rules, common.Units,
            common.NoColor,
        };
        quote.AddTo(command);
        command.SetAction(parsed =>
        {
            var (pairs, error) = targets.Pair(parsed);
            if (pairs is null || quote.Wrong(parsed) is not null)
                return Refusal.Usage(error ?? quote.Wrong(parsed)!).Tell();
            if (CommonOptions.Unheeded(parsed.GetValue(common.For), pairs) is { } unheeded)
                return Refusal.Usage(unheeded).Tell();
            var folders = common.Folders(parsed);
            if (pairs.Refused([.. parsed.GetValue(builds)!, .. quote.Files(parsed)], FilesRead.Of(folders)) is { } refusal)
                return refusal.Tell();
            if (TaxOf(parsed.GetValue(tax), parsed.GetValue(net)) is not ({ } asked, var wrong))
                return Refusal.Usage("--net needs --tax RATE, since tax is to be added").Tell();
            if (wrong is not null)
                return Refusal.Usage(wrong).Tell();
            using var told = Lengths.Asked(common.Told(parsed));
            var outcome = Once.Asked(folders, o => o.List(parsed.GetValue(builds)!, asked, quote.Request(parsed)));
            if (outcome.Result is not { } result)
                return ProblemLines.Tell(outcome.Problems, Console.Error);
            var options = ReportOptions.Default with
            {
                Color = CommonOptions.Color(parsed.GetValue(common.NoColor)),
                Customer = CommonOptions.Customer(parsed.GetValue(common.For)),
            };
            return TargetOptions.Write(pairs, options, (format, o, output) =>
            {
                using var ofFormat = Lengths.Asked(UnitsOfFormats.Of(format, Lengths.Told));
                var inUnits = ofFormat.IsChange
                    ? Once.Asked(folders, again => again.List(parsed.GetValue(builds)!, asked, quote.Request(parsed))).Result ?? result
                    : result;
                ListReports.Find(format)!.Write(inUnits, o, output);
            })
                ?? ExitStatus.Good;
        });
        return command;
    }

    private static (Tax? Tax, string? Wrong) TaxOf(string? rate, bool net)
    {
        if (rate is null)
            return net ? (null, null) : (Tax.NotAsked, null);
        return Tax.Parse(rate) is { } percent ? (new Tax(percent, net), null)
            : (Tax.NotAsked, $"--tax takes a rate in per cent from 0 to 100 with a decimal point, such as 19 or 8.1, found `{rate}`");
    }
}
