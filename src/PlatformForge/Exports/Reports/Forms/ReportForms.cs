using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Sets;
using PlatformForge.Exports.Looks;
using PlatformForge.Platforms.AsBuilt;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Track;

namespace PlatformForge.Exports.Reports.Forms;

/// <summary>Where a platform faces a track, and how its edge follows what vehicles need.</summary>
public sealed record FaceReport(string Track, Side Side, double From, double To, EdgeStyle Edge, double? LeastRadius, double Taper, double? Reach,
    bool BodiesPassOver, double VerticalGap)
{
    internal static FaceReport Of(FaceSpec f) => new(f.Track, f.Side, f.From, f.To, f.Edge, f.LeastRadius, f.Taper, f.Reach, f.BodiesPassOver, f.VerticalGap);
}

/// <summary>One entry of the clearance budget, mm.</summary>
public sealed record BudgetLineReport(string Name, double AmountMm, string Basis, BudgetPlacing Placing);

/// <summary>How wide the space between two bodies of a set is while it passes, mm.</summary>
public sealed record JointReport(string Set, string Ahead, string Behind, JointKindReport Joint, OpeningReport Platform, OpeningReport Away)
{
    internal static JointReport Of(JointOpening j) => new(j.Set, j.Ahead, j.Behind, new(j.Joint.Kind, j.Joint.Gap), OpeningReport.Of(j.Platform),
        OpeningReport.Of(j.Away));
}

/// <summary>How two bodies are joined, and the gap between them on straight track.</summary>
public sealed record JointKindReport(BodyJointKind Kind, double Gap);

/// <summary>Least and greatest opening and where they are met.</summary>
public sealed record OpeningReport(double Least, double LeastAt, double Greatest, double GreatestAt)
{
    internal static OpeningReport Of(OpeningRange o) => new(o.Least, o.LeastAt, o.Greatest, o.GreatestAt);
}

/// <summary>Gaps measured on the finished layout, held against the plan.</summary>
public sealed record AsBuiltReport(string Platform, IReadOnlyList<MeasureReport> Measures)
{
    internal static AsBuiltReport? Of(AsBuiltEdge? edge) => edge is null ? null : new(edge.Platform, [.. edge.Measures.Select(m => new MeasureReport(
        new(m.Reading.File, m.Reading.Line, m.Reading.Chainage, m.Reading.Gap, m.Reading.Vehicle), m.Planned, m.True,
        [.. m.Vehicles.Select(v => new RoomReport(v.Vehicle, v.Part, v.Swept, v.Planned, v.Left))]))]);
}

/// <summary>A reading, where the coping was planned and where it is.</summary>
public sealed record MeasureReport(ReadingReport Reading, double Planned, double True, IReadOnlyList<RoomReport> Vehicles);

/// <summary>A gap as it was noted.</summary>
public sealed record ReadingReport(string File, int Line, double Chainage, double Gap, string? Vehicle);

/// <summary>What is left for a vehicle at a reading.</summary>
public sealed record RoomReport(string Vehicle, string Part, double Swept, double Planned, double Left);

/// <summary>A loose dowel to be cut.</summary>
public sealed record DowelReport(string What, double Diameter, double Length, int Count);

/// <summary>What a print takes.</summary>
public sealed record EstimateReport(double Volume, double Plastic, double Grams, double Metres, double Hours, double? Cost)
{
    internal static EstimateReport Of(PrintEstimate e) => new(e.Volume, e.Plastic, e.Grams, e.Metres, e.Hours, e.Cost);
}

/// <summary>Another track beside the platform, where it comes nearest.</summary>
public sealed record NearTrackReport(string Track, bool Behind, double Chainage, double Distance, IReadOnlyList<string> Vehicles)
{
    internal static NearTrackReport Of(NearTrack t) => new(t.Track, t.Behind, t.Chainage, t.Distance, t.Vehicles);
}

/// <summary>What the forecast takes the slicer to be set to: lengths in mm, speeds in mm/s.</summary>
public sealed record PrintReport(double Layer, double FirstLayer, double Nozzle, int Walls, int SolidLayers, double Infill, PrintPace Pace, SpeedsReport Speeds)
{
    internal static PrintReport Of(PrinterSpec p) => new(p.Layer, p.FirstLayerHeight, p.Nozzle, p.Walls, p.SolidLayers, p.Infill, p.Pace,
        SpeedsReport.Of(p.Speeds));
}

/// <summary>Speeds in mm/s, acceleration in mm/s², flow in mm³/s, retraction in s.</summary>
public sealed record SpeedsReport(
    double OuterWall, double Wall, double SmallWall, double Infill, double Bridge, double FirstLayer, double Travel, double Acceleration,
        double CornerJump, double Flow, double Retraction)
{
    internal static SpeedsReport Of(PrintSpeeds s) => new(s.OuterWall, s.Wall, s.SmallWall, s.Infill, s.Bridge, s.FirstLayer, s.Travel, s.Acceleration,
        s.CornerJump, s.Flow, s.Retraction);
}
