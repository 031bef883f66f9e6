using PlatformForge.Platforms;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Sections.Joints;

/// <summary>Upright holes and sockets that the nozzle leaves open.</summary>
internal static class HoleRule
{
    /// <summary>Least width of an opening in widths of the nozzle: narrower ones close while they are printed. Common practice, no source.</summary>
    public const double LeastLines = 2;

    /// <summary>An opening of exactly the least width is wide enough, however its figure was rounded, mm.</summary>
    private const double Rounding = 1e-9;

    public static IEnumerable<Finding> Check(PlatformSpec platform, PrinterSpec printer)
    {
        double least = LeastLines * printer.Nozzle;
        var openings = new List<(string Key, string What, double Size, double Fit)>();
        if (platform.Fence is { } fence)
        {
            openings.Add(("fence.pin_diameter", "holes of the fence's posts are", fence.PinDiameter, fence.Fit));
        }

        openings.AddRange(platform.Holes.Select((h, i) => (Invariant($"holes[{i}].diameter"), $"hole for '{h.Name}' is", h.Diameter, h.Fit)));
        openings.AddRange(platform.Sockets.Select((s, i) => (Invariant($"sockets[{i}].{(s.Along < s.Across ? "along" : "across")}"), $"socket for '{s.Name}' is", Math.Min(s.Along, s.Across), s.Fit)));
        return openings.Where(o => o.Size + o.Fit < least - Rounding)
            .Select(o => SectionFindings.OpeningTooNarrow($"{platform.Key}.{o.Key}", o.What, o.Size + o.Fit, least, least - o.Fit, (o.Size + o.Fit) / LeastLines));
    }
}
