namespace FitCheck.Hostile;

/// <summary>Makes inputs of one sort and runs what reads them.</summary>
internal interface IBatch
{
    /// <summary>
    /// Makes so many in the current folder, which is empty, runs the commands on them, and returns how many inputs it made.
    /// </summary>
    int Run(Commands commands, int seed, int count);
}
