using System.Diagnostics;
using System.Globalization;
using System.Net;

namespace FitCheck.Benchmarks;

/// <summary>
/// What the local page costs, by real requests to the program as a user starts it: from its start to the first page, from a click to a new
/// verdict, the choices of a slot, fifty people at once, and memory after ten thousand actions.
/// </summary>
internal static class PageBenchmark
{
    private const int Starts = 9, Clicks = 40, People = 50, Rounds = 9, Actions = 10_000;

    public static int Run(string[] args)
    {
        var actions = Actions;
        if (args is [_, "--actions", var number])
        {
            if (!int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out actions) || actions < 1)
                return Wrong.Usage("--page [--actions N]");
        }
        else if (args is not [_])
            return Wrong.Usage("--page [--actions N]");
        using (Server.Start())
        {
            // Whatever is remembered of the inputs is written before anything is timed.
        }
        Tell("start to the first page", "ms", Many(Starts, () =>
        {
            var clock = Stopwatch.StartNew();
            using var once = Server.Start();
            return clock.Elapsed.TotalMilliseconds;
        }));
        using var server = Server.Start();
        var text = File.ReadAllText(Built.Path("catalog", "builds", "front-rear-two-amps.yaml"));
        for (var i = 0; i < 60; i++)
            server.Ask("", text + $"# {i}\n", "place:front-door-left");
        var n = 0;
        Tell("click to a new verdict, richest build, processor time", "ms", Many(Clicks, () =>
        {
            var before = server.Processor;
            server.Ask("", text + $"# click {n++}\n", "place:front-door-left");
            return (server.Processor - before).TotalMilliseconds;
        }));
        foreach (var (upto, times) in new[] { ("10", 10), ("50", 5) })
        {
            Tell($"{upto} choices of a driver, each completed and judged", "ms", Many(times, () =>
            {
                var clock = Stopwatch.StartNew();
                server.Ask("choices", $"kind: build\nname: n{n++}\nvehicle: tansy-hatch\n", "",
                    ("slot", "driver@front-door-left+front-door-right"),
                    ("upto", upto));
                return clock.Elapsed.TotalMilliseconds;
            }));
        }
        Together(server, text);
        Memory(server, text, actions);
        return 0;
    }

    // In a server that has been at work for a while; one round is chance.
    private static void Together(Server server, string text)
    {
        for (var i = 0; i < 200; i++)
            server.Ask("", text + $"# before {i}\n", "place:front-door-left");
        ThreadPool.SetMinThreads(2 * People, 2 * People);
        var rounds = Enumerable.Range(0, Rounds).Select(_ => Round(server, text)).OrderBy(r => r.Slowest / r.Alone).ToList();
        var (least, (alone, slowest), most) = (rounds[0], rounds[Rounds / 2], rounds[^1]);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{People} at once: the slowest {slowest:0} ms, {slowest / alone:0.0} times one alone ({alone:0} ms), median of {Rounds} "
                + $"rounds ({least.Slowest / least.Alone:0.0} to {most.Slowest / most.Alone:0.0} times); none lost"));
    }

    private static (double Alone, double Slowest) Round(Server server, string text)
    {
        var alone = Many(9, () => Timed(() => server.Ask("", text + $"# alone {Guid.NewGuid()}\n", "place:front-door-left")))[4];
        // A thread for each: those of the pool come one by one, and would be what is measured.
        var times = new double[People];
        var all = Enumerable.Range(0, People).Select(i => new Thread(() => times[i] = Timed(() =>
            server.Ask("", text + $"# together {Guid.NewGuid()}\n", "place:front-door-left")))).ToList();
        all.ForEach(t => t.Start());
        all.ForEach(t => t.Join());
        return (alone, times.Max());
    }

    private static void Memory(Server server, string text, int actions)
    {
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"memory before: {server.Megabytes:0} MB"));
        string[] buttons = ["place:front-door-left", "side:measure", "side:text", "side:buy", "place:elsewhere"];
        for (var i = 1; i <= actions; i++)
        {
            server.Ask("", text + $"# {i}\n", buttons[i % buttons.Length]);
            if (i % Math.Max(1, actions / 5) == 0)
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"memory after {i} actions: {server.Megabytes:0} MB"));
        }
    }

    private static double Timed(Action action)
    {
        var clock = Stopwatch.StartNew();
        action();
        return clock.Elapsed.TotalMilliseconds;
    }

    private static double[] Many(int times, Func<double> once)
    {
        var all = Enumerable.Range(0, times).Select(_ => once()).ToArray();
        Array.Sort(all);
        return all;
    }

    private static void Tell(string what, string unit, double[] sorted) => Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
        $"{what}: {sorted[sorted.Length / 2]:0.0} {unit}, median of {sorted.Length} ({sorted[0]:0.0} to {sorted[^1]:0.0})"));

    private sealed class Server : IDisposable
    {
        private readonly StartedPage _page;
        private readonly HttpClient _client;

        private Server(StartedPage page, HttpClient client) => (_page, _client) = (page, client);

        public TimeSpan Processor
        {
            get
            {
                _page.Process.Refresh();
                return _page.Process.TotalProcessorTime;
            }
        }

        public double Megabytes
        {
            get
            {
                _page.Process.Refresh();
                return _page.Process.WorkingSet64 / 1e6;
            }
        }

        /// <summary>Starts the page, and returns when its first page is there.</summary>
        public static Server Start()
        {
            var page = new StartedPage();
            var address = new Uri(page.Address);
            var client = new HttpClient(new HttpClientHandler { CookieContainer = new CookieContainer() })
            {
                BaseAddress = new Uri(address.GetLeftPart(UriPartial.Authority)),
            };
            client.DefaultRequestHeaders.Add("Origin", address.GetLeftPart(UriPartial.Authority));
            client.DefaultRequestHeaders.Add("HX-Request", "true");
            client.GetStringAsync(address).GetAwaiter().GetResult();
            return new Server(page, client);
        }

        public void Ask(string name, string text, string action, params (string Name, string Value)[] more)
        {
            using var form = new MultipartFormDataContent();
            foreach (var (field, value) in more.Append(("text", text)).Append(("do", action)).Append(("place", "front-door-left")))
                form.Add(new StringContent(value), field);
            using var answer = _client.PostAsync(new Uri(name, UriKind.Relative), form).GetAwaiter().GetResult();
            answer.EnsureSuccessStatusCode();
            answer.Content.ReadAsStringAsync().GetAwaiter().GetResult();
        }

        public void Dispose()
        {
            _client.Dispose();
            _page.Dispose();
        }
    }
}
