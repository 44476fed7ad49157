using System.Diagnostics;
using System.Text.Json.Nodes;

namespace FitCheck.Benchmarks;

/// <summary>
/// General-purpose tools that hold YAML files against a JSON Schema: ajv-cli, and the rule linter spectral with a rule that does the same.
/// They are given all schemas of the catalog as one, which the entry's kind chooses from.
/// </summary>
internal sealed class Peers
{
    private static readonly string[] Packages = ["ajv-cli@5.0.0", "@stoplight/spectral-cli@6.16.3"];
    private readonly string _programs;
    private readonly string _work;

    private Peers(string programs, string work) => (_programs, _work) = (programs, work);

    /// <summary>
    /// Installs the tools with npm into a temporary folder, unless they are there from an earlier run; null without npm or a registry.
    /// </summary>
    public static Peers? Install(string work)
    {
        var folder = Directory.CreateDirectory(Path.Combine(Path.GetTempPath(), "fitcheck-benchmark-peers")).FullName;
        var programs = Path.Combine(folder, "node_modules", ".bin");
        try
        {
            if (!File.Exists(Path.Combine(programs, "spectral")))
                Output("npm", ["install", "--no-audit", "--no-fund", "--prefix", folder, .. Packages]);
        }
        catch (Exception e) when (e is System.ComponentModel.Win32Exception or InvalidOperationException)
        {
            Console.Error.WriteLine($"without ajv-cli and spectral-cli, which npm did not install: {e.Message}");
            return null;
        }
        var peers = new Peers(programs, work);
        peers.WriteSchemas();
        return peers;
    }

    public Timed Ajv(string catalog, bool lists) =>
        new("ajv-cli", Path.Combine(_programs, "ajv"),
            ["validate", "--strict=false", "-s", Path.Combine(_work, lists ? "list.json" : "entry.json"), "-d", catalog + "/**/*.yaml"]);

    public Timed Spectral(string catalog, bool lists) =>
        new("spectral-cli", Path.Combine(_programs, "spectral"),
            ["lint", "--quiet", "-r", Path.Combine(_work, lists ? "list-rules.json" : "entry-rules.json"), catalog + "/**/*.yaml"]);

    // ajv-cli takes one schema, which chooses by kind. spectral compiles a rule's schema anew for every file, so it gets the small one of
    // the folder's kind.
    private void WriteSchemas()
    {
        var shared = Schema("common")["definitions"]!.AsObject();
        var all = shared.DeepClone().AsObject();
        var choices = new JsonArray();
        foreach (var kind in Directory.GetDirectories(Built.Path("catalog")).Select(f => KindOf(f)).OfType<string>().Distinct()
            .Order(StringComparer.Ordinal))
        {
            all["kind-" + kind] = Schema(kind);
            choices.Add(
                JsonNode.Parse(
                    """{"if": {"properties": {"kind": {"const": "KIND"}}}, "then": {"$ref": "#/definitions/kind-KIND"}}""".Replace("KIND",
                        kind, StringComparison.Ordinal)));
        }
        all["entry"] = new JsonObject { ["allOf"] = choices };
        foreach (var lists in new[] { false, true })
        {
            var name = lists ? "list" : "entry";
            File.WriteAllText(Path.Combine(_work, name + ".json"), Whole(all, "entry", lists).ToJsonString());
            var overrides = new JsonArray();
            foreach (var folder in Directory.GetDirectories(Built.Path("catalog")).Order(StringComparer.Ordinal))
            {
                if (KindOf(folder) is { } kind)
                    overrides.Add(
                        Override(Path.GetFileName(folder),
                            Whole(new JsonObject(
                                shared.DeepClone().AsObject().Append(new("entry", Schema(kind)))
                                    .Select(p => new KeyValuePair<string, JsonNode?>(p.Key, p.Value?.DeepClone()))), "entry", lists)));
            }
            File.WriteAllText(Path.Combine(_work, name + "-rules.json"), new JsonObject { ["overrides"] = overrides }.ToJsonString());
        }
    }

    private static JsonObject Override(string folder, JsonObject schema) => new()
    {
        ["files"] = new JsonArray($"catalog/{folder}/*.yaml"),
        ["rules"] = new JsonObject
        {
            [folder] = new JsonObject
            {
                ["given"] = "$",
                ["severity"] = "error",
                ["then"] = new JsonObject
                {
                    ["function"] = "schema",
                    ["functionOptions"] = new JsonObject { ["schema"] = schema, ["allErrors"] = true }
                },
            },
        },
    };

    private static JsonObject Whole(JsonObject definitions, string entry, bool lists)
    {
        var one = new JsonObject { ["$ref"] = "#/definitions/" + entry };
        var schema = lists ? new JsonObject { ["type"] = "array", ["items"] = one } : one;
        schema["$schema"] = "http://json-schema.org/draft-07/schema#";
        schema["definitions"] = definitions.DeepClone();
        return schema;
    }

    // The folder says its kind in the schema line of its entries.
    private static string? KindOf(string folder) =>
        Directory.GetFiles(folder, "*.yaml").Order(StringComparer.Ordinal).FirstOrDefault() is { } file
            && Path.GetFileName(folder) is not ("builds" or "starters")
            ? File.ReadLines(file).First(l => l.StartsWith("kind: ", StringComparison.Ordinal))["kind: ".Length..]
            : null;

    private static JsonObject Schema(string kind)
    {
        var text = File.ReadAllText(Built.Path("catalog", "schema", kind + ".schema.json"))
            .Replace("common.schema.json#/", "#/", StringComparison.Ordinal);
        var schema = JsonNode.Parse(text)!.AsObject();
        schema.Remove("$schema");
        return schema;
    }

    private static void Output(string program, string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, UseShellExecute = false };
        using var process = Process.Start(start)!;
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        if (process.ExitCode != 0)
            throw new InvalidOperationException($"{program} ended with {process.ExitCode}");
    }
}
