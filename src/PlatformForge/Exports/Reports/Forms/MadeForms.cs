using PlatformForge.Platforms.Plans;

namespace PlatformForge.Exports.Reports.Forms;

/// <summary>How far apart the ribs across are, middle to middle, mm: asked at most, found, and where the greatest is.</summary>
public sealed record RibReport(double Asked, int Count, double Least, double Greatest, double GreatestFrom, double GreatestTo)
{
    internal static RibReport Of(RibPitch r) => new(r.Asked, r.Count, r.Least, r.Greatest, r.From, r.To);
}

/// <summary>Something that stands on the platform or is let into it: where it is, what it takes, and what was asked and found of it.</summary>
public sealed record FeatureReport(string Name, string Key, IReadOnlyList<OpenPlaceReport> Openings, IReadOnlyList<PartReport> Parts,
    IReadOnlyList<FoundReport> Made)
{
    internal static FeatureReport Of(PlatformPlan plan, PlannedFeature f) =>
        new(f.Name, f.Key, [.. f.Openings.Select(o => OpenPlaceReport.Of(o, plan.OnTrack(o.Middle)))],
        [.. f.Parts.Select(p => new PartReport(p.What, p.Count, p.Diameter, p.Length))],
        [.. f.Made.Select(m => new FoundReport(m.What, m.Asked, m.Found, m.Count))]);
}

/// <summary>An opening in the deck: its middle, its sizes with what was added so that the thing goes in, and its depth where it has a floor, all mm.</summary>
public sealed record OpenPlaceReport(string Name, double Chainage, double Reach, double Along, double Across, bool Round, double? Depth)
{
    internal static OpenPlaceReport Of(Opening o, PlanPlace on) => new(o.Name, on.Chainage, on.Reach, o.Along, o.Across, o.IsRound, o.Depth);
}

/// <summary>What is bought or cut for a feature, mm.</summary>
public sealed record PartReport(string What, int Count, double? Diameter, double? Length);

/// <summary>What was asked and what was found.</summary>
public sealed record FoundReport(string What, string Asked, string Found, int Count);
