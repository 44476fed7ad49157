using FitCheck.Physics.Quantities;
using FitCheck.Yaml;

namespace FitCheck.Catalog;

/// <summary>A mounting adapter or spacer between the panel and the driver.</summary>
public sealed record Adapter : Part
{
    internal Adapter(Fields f) : base(f)
    {
        Thickness = f.Length("thickness");
        Tilt = f.Figure("tilt", Dimension.Radian);
        Handed = f.Word("handed", "no");
        Opening = f.Length("opening");
        OpeningMinor = f.Length("opening_minor");
        Outer = f.Length("outer");
        Material = f.Text("material");
        Cuttable = f.Truth("cuttable");
        TabRadius = f.Inner("inner_tabs")?.Length("radius");
        TabsRemovable = f.Inner("inner_tabs")?.Truth("removable");
        CableExit = f.Truth("cable_exit");
        Fits = Fit.Read(f);
    }

    /// <summary>At the centre.</summary>
    public Figure? Thickness { get; }
    public Figure? Tilt { get; }
    public string Handed { get; }
    public Figure? Opening { get; }
    public Figure? OpeningMinor { get; }
    public Figure? Outer { get; }
    public Located<string>? Material { get; }
    public bool? Cuttable { get; }
    public Figure? TabRadius { get; }
    public bool? TabsRemovable { get; }
    public bool? CableExit { get; }
    public IReadOnlyList<Fit> Fits { get; }
}

/// <summary>A cup that holds a tweeter in the vehicle's place for it.</summary>
public sealed record Cup : Part
{
    internal Cup(Fields f) : base(f)
    {
        Hole = f.Length("hole");
        Depth = f.Length("depth");
        Outer = f.Length("outer");
        GrilleGap = f.Length("grille_gap");
        Material = f.Text("material");
        Cuttable = f.Truth("cuttable");
        ModuleRoom = f.Figures("module_room", Dimension.Metre);
        Fits = Fit.Read(f);
    }

    public Figure? Hole { get; }
    public Figure? Depth { get; }
    public Figure? Outer { get; }
    public Figure? GrilleGap { get; }
    public Located<string>? Material { get; }
    public bool? Cuttable { get; }
    public IReadOnlyList<Figure> ModuleRoom { get; }
    public IReadOnlyList<Fit> Fits { get; }
}

/// <summary>A harness adapter: the factory plug on one end, the driver's terminals on the other.</summary>
public sealed record Harness : Part
{
    internal Harness(Fields f) : base(f)
    {
        From = f.Text("from");
        To = Terminals.Read(f.Inner("to"));
        Length = f.Length("length");
        Polarity = f.Text("polarity");
    }

    public Located<string>? From { get; }
    public Terminals? To { get; }
    public Figure? Length { get; }
    public Located<string>? Polarity { get; }
}
