using System.Globalization;
using FitCheck.Hostile;

// FitCheck.Hostile N [SEED [FOLDER]]       N inputs made up, through every command that reads them
// FitCheck.Hostile worker SEED FROM TO SIZE FOLDER   some batches of them, as the first does in processes of its own
// FitCheck.Hostile kill N [SEED]           N processes that write, killed at random moments
return args switch
{
    ["kill", var count] => Ended(Number(count), 1),
    ["kill", var count, var seed] => Ended(Number(count), Number(seed)),
    ["worker", var seed, var from, var to, var size, var folder] =>
        Worker.Run(Number(seed), Number(from), Number(to), Number(size), folder),
    [var count] when Number(count) > 0 => Made(Number(count), 1, null),
    [var count, var seed] when Number(count) > 0 => Made(Number(count), Number(seed), null),
    [var count, var seed, var folder] when Number(count) > 0 => Made(Number(count), Number(seed), folder),
    _ => Usage(),
};

static int Number(string word) => int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : -1;

static int Made(int count, int seed, string? folder)
{
    var place = folder is null ? Directory.CreateTempSubdirectory("fitcheck-hostile-").FullName : Path.GetFullPath(folder);
    var status = new Inputs(seed, place).Run(count);
    if (status == 0 && folder is null)
        Directory.Delete(place, recursive: true);
    return status;
}

static int Ended(int count, int seed)
{
    var place = Directory.CreateTempSubdirectory("fitcheck-kills-").FullName;
    var status = new Kills(seed, place).Run(count);
    if (status == 0)
        Directory.Delete(place, recursive: true);
    return status;
}

static int Usage()
{
    Console.Error.WriteLine("expected how many inputs, or `kill` and how many kills; and a seed if you like");
    return 3;
}
