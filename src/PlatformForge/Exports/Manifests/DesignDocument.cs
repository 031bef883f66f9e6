using System.Text.Json.Serialization;
using PlatformForge.Clearance;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Track;

namespace PlatformForge.Exports.Manifests;

/// <summary>
/// The file design.json, format 1. Forms of its own, so that a renamed property of the program neither changes the file nor is read as a default. Lengths in
/// mm, angles in radians, curvatures in 1/mm, heights above rail top. Whatever is written here is read when a folder is verified.
/// </summary>
internal sealed record DesignDocument(
    string Tool, int Format, string Project, double Ratio, double Gauge, double RailTop,
    IReadOnlyList<DesignTrackForm> Tracks, DesignPrinterForm Printer, IReadOnlyList<DesignPlatformForm> Platforms)
{
    public const int OurFormat = 1;

    public static DesignDocument Of(DesignCopy d) => new(
        Manifest.OurTool, OurFormat, d.Project, d.Ratio, d.Gauge, d.RailTop,
        [.. d.Tracks.Select(DesignTrackForm.Of)], DesignPrinterForm.Of(d.Printer), [.. d.Platforms.Select(DesignPlatformForm.Of)]);

    public DesignCopy ToCopy() => new(Project, Ratio, Gauge, RailTop, [.. Tracks.Select(t => t.ToTrack())], Printer.ToPrinter(),
        [.. Platforms.Select(p => p.ToPlatform())]);
}

/// <summary>A track as ridden.</summary>
internal sealed record DesignTrackForm(string Name, bool StartsAtBuffers, bool EndsAtBuffers, IReadOnlyList<DesignElement> Elements,
    IReadOnlyList<DesignVehicleForm> Vehicles,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? RailTop = null)
{
    public static DesignTrackForm Of(DesignTrack t) => new(t.Name, t.StartsAtBuffers, t.EndsAtBuffers, t.Elements,
        [.. t.Vehicles.Select(DesignVehicleForm.Of)], t.RailTop);

    public DesignTrack ToTrack() => new(Name, Elements, [.. Vehicles.Select(v => v.ToVehicle())], StartsAtBuffers, EndsAtBuffers) { RailTop = RailTop };
}

/// <summary>A vehicle and everything on it that can touch.</summary>
internal sealed record DesignVehicleForm(
    string Name, string Key, double PivotCentres, double LeadingWheelbase, double TrailingWheelbase, double LeadingPivotAhead, double TrailingPivotAhead,
    bool EitherWayRound,
    bool Hangs, string? SetName, string? TruckOf, double? LeastRadius, double? MiddleAxlePlay, DesignSillForm? Sill, IReadOnlyList<DesignPartForm> Parts)
{
    public static DesignVehicleForm Of(Vehicle v) => new(
        v.Name, v.Key, v.PivotCentres, v.LeadingWheelbase, v.TrailingWheelbase, v.LeadingPivotAhead, v.TrailingPivotAhead, v.EitherWayRound,
        v.Hangs, v.SetName, v.TruckOf, v.LeastRadius, v.MiddleAxlePlay,
        v.Sill is { } s ? new(s.HalfWidth, s.Height, s.FromX, s.ToX) : null,
        [.. v.Parts.Select(p => new DesignPartForm(p.Name, p.Carrier, p.Outline, p.ZLow, p.ZHigh))]);

    public Vehicle ToVehicle() => new(Name, PivotCentres, LeadingWheelbase, TrailingWheelbase,
        [.. Parts.Select(p => new VehiclePart(p.Name, p.Carrier, p.Outline, p.ZLow, p.ZHigh))])
    {
        Key = Key,
        LeadingPivotAhead = LeadingPivotAhead,
        TrailingPivotAhead = TrailingPivotAhead,
        EitherWayRound = EitherWayRound,
        Hangs = Hangs,
        SetName = SetName,
        TruckOf = TruckOf,
        LeastRadius = LeastRadius,
        MiddleAxlePlay = MiddleAxlePlay,
        Sill = Sill is { } s ? new(s.HalfWidth, s.Height, s.FromX, s.ToX) : null,
    };
}

/// <summary>Where a passenger steps from.</summary>
internal sealed record DesignSillForm(double HalfWidth, double Height, double FromX, double ToX);

/// <summary>A part of a vehicle: an outline in its carrier's frame, between two heights.</summary>
internal sealed record DesignPartForm(string Name, PartCarrier Carrier, IReadOnlyList<Point2> Outline, [property: JsonPropertyName("z_low")] double ZLow,
    [property: JsonPropertyName("z_high")] double ZHigh);

/// <summary>The printer, as far as what was printed is held to it.</summary>
internal sealed record DesignPrinterForm(IReadOnlyList<Point2> Bed, double Height, double Margin, double Nozzle)
{
    public static DesignPrinterForm Of(PrinterSpec p) => new(p.Bed, p.Height, p.Margin, p.Nozzle);

    public PrinterSpec ToPrinter() => new(Bed, Height) { Margin = Margin, Nozzle = Nozzle };
}

/// <summary>A platform by what it is held to.</summary>
internal sealed record DesignPlatformForm(string Name, double Height, DesignFaceForm Face, IReadOnlyList<DesignElement> Chart, DesignBudgetForm Budget,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] DesignOtherFaceForm? OtherFace = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] bool? IsSkew = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] DesignDeckForm? Deck = null)
{
    public static DesignPlatformForm Of(DesignPlatform p) => new(p.Name, p.Height, DesignFaceForm.Of(p.Face),
        p.Chart, DesignBudgetForm.Of(p.Budget), p.OtherFace is { } other ? DesignOtherFaceForm.Of(other) : null, p.IsSkew ? true : null,
        p.Deck is { } deck ? DesignDeckForm.Of(deck) : null);

    public DesignPlatform ToPlatform() => new(Name, Chart, Face.ToFace(), Height, Budget.ToBudget())
    {
        OtherFace = OtherFace?.ToPlatform(Name, Height),
        IsSkew = IsSkew ?? false,
        Deck = Deck?.ToDeck(),
    };
}

/// <summary>The walking surface from break to break, and what stands over it.</summary>
internal sealed record DesignDeckForm(IReadOnlyList<double> Breaks, IReadOnlyList<DesignPlaneForm> Planes, IReadOnlyList<DesignStanding> Stands)
{
    public static DesignDeckForm Of(DesignDeck d) => new(d.Breaks, [.. d.Planes.Select(p => new DesignPlaneForm(p.Z, p.X, p.Y))], d.Stands);

    public DesignDeck ToDeck() => new(Breaks, [.. Planes.Select(p => new HeightPlane(p.Height, p.AlongX, p.AlongY))], Stands);
}

/// <summary>A plane: its height over the baseboard at the layout's origin, mm, and how it rises along x and y.</summary>
internal sealed record DesignPlaneForm(double Height, double AlongX, double AlongY);

/// <summary>The second face of an island: its track's chart and what is kept there.</summary>
internal sealed record DesignOtherFaceForm(DesignFaceForm Face, IReadOnlyList<DesignElement> Chart, DesignBudgetForm Budget)
{
    public static DesignOtherFaceForm Of(DesignPlatform p) => new(DesignFaceForm.Of(p.Face), p.Chart, DesignBudgetForm.Of(p.Budget));

    public DesignPlatform ToPlatform(string name, double height) => new(name, Chart, Face.ToFace(), height, Budget.ToBudget());
}

/// <summary>Where a platform faces a track, and how bodies count above its coping.</summary>
internal sealed record DesignFaceForm(string Track, Side Side, double From, double To, bool BodiesPassOver, double VerticalGap)
{
    public static DesignFaceForm Of(FaceSpec f) => new(f.Track, f.Side, f.From, f.To, f.BodiesPassOver, f.VerticalGap);

    public FaceSpec ToFace() => new(Track, Side, From, To) { BodiesPassOver = BodiesPassOver, VerticalGap = VerticalGap };
}

/// <summary>What is kept from vehicles, entry by entry, and their play.</summary>
internal sealed record DesignBudgetForm(BudgetRule Rule, IReadOnlyList<DesignBudgetLine> Lines, DesignPlayForm Play)
{
    public static DesignBudgetForm Of(ClearanceBudget b) =>
        new(b.Rule, [.. b.Lines.Select(l => new DesignBudgetLine(l.Name, l.AmountMm, l.Basis, l.Placing))], DesignPlayForm.Of(b.Play));

    public ClearanceBudget ToBudget() => new([.. Lines.Select(l => new BudgetLine(l.Name, l.AmountMm, l.Basis, l.Placing))], Play.ToPlay(), Rule);
}

/// <summary>One entry of the budget.</summary>
internal sealed record DesignBudgetLine(string Name, double AmountMm, string Basis, BudgetPlacing Placing);

/// <summary>How far vehicles may stand off the middle of the track.</summary>
internal sealed record DesignPlayForm(double Wheelset, double Pivot, double Roll, double RollCentreHeight, double Cant)
{
    public static DesignPlayForm Of(RunningPlay p) => new(p.Wheelset, p.Pivot, p.Roll, p.RollCentreHeight, p.Cant);

    public RunningPlay ToPlay() => new(Wheelset, Pivot, Roll, RollCentreHeight) { Cant = Cant };
}
