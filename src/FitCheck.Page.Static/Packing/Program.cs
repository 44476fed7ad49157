namespace FitCheck.Page.Static.Packing;

/// <summary>Run by the publish, with what it wrote, catalog, rules and reports, and where the site goes.</summary>
internal static class Program
{
    private static int Main(string[] args)
    {
        if (args is not [var published, var catalog, var rules, var reports, var site])
        {
            Console.Error.WriteLine("Expected five folders: the published one, those of catalog, rules and reports, and the one to fill.");
            return 3;
        }
        var valid = Directory.CreateTempSubdirectory("fitcheck-valid-");
        try
        {
            var data = new Data(catalog, rules, reports, valid.FullName);
            if (data.Open() is not { } engine)
            {
                foreach (var problem in data.Problems)
                    Console.Error.WriteLine(problem);
                return 2;
            }
            if (!Site.IsOfThisLibrary(published))
            {
                Console.Error.WriteLine($"{published} was not published with the library that found the catalog valid.");
                return 70;
            }
            new Site(site).Lay(published, engine, data);
            return 0;
        }
        finally
        {
            valid.Delete(recursive: true);
        }
    }
}
