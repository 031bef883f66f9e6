using PlatformForge.Clearance;
using PlatformForge.Geometry;
using PlatformForge.Track;
using static System.FormattableString;

namespace PlatformForge.Exports.Manifests;

/// <summary>
/// Whether the figures of a design copy are those of a model: what this program writes keeps these bounds by far, and what keeps them
/// is verified in bounded time.
/// </summary>
internal static class DesignLimits
{
    /// <summary>Largest figure of play, margin and the like, and of a bed or a height, mm.</summary>
    private const double LargestAllowance = 1000, LargestSize = 10_000;

    /// <summary>Tightest curve taken, mm.</summary>
    private const double TightestRadius = 1;

    /// <summary>What is wrong, as it goes on after the file's name; null when nothing is.</summary>
    public static string? Fault(DesignCopy design) =>
        !(design.Ratio is > 0 and <= 1e4 && design.Gauge is > 0 and <= LargestAllowance)
            ? Invariant($"has a scale of {design.Ratio} or a gauge of {design.Gauge:0.####} mm, which no model has")
        : design.Tracks.Select(t => t.RailTop ?? design.RailTop).Append(design.RailTop).Any(t => t is not (>= 0 and <= LargestAllowance))
        ? Invariant($"has a rail top below the baseboard, or more than {LargestAllowance:0} mm over it")
        : !(Bounded(design.Printer.Bed, LargestSize) && design.Printer.Height is > 0 and <= LargestSize && design.Printer.Margin is >= 0 and <= LargestSize
            && design.Printer.Nozzle is > 0 and <= LargestAllowance) ? "has a printer without a bed, a height, a margin or a nozzle"
        : Twice(design.Tracks.Select(t => t.Name)) is { } track ? Invariant($"has two tracks of the name '{track}'")
        : Twice(design.Platforms.Select(p => p.Name)) is { } platform ? Invariant($"has two platforms of the name '{platform}'")
        : design.Tracks.Select(t => OfLine(t.Name, t.Elements) ?? OfVehicles(t)).FirstOrDefault(f => f is not null)
        ?? design.Platforms.SelectMany(p => p.Faces).Select(OfPlatform).FirstOrDefault(f => f is not null);

    private static string? OfLine(string name, IReadOnlyList<DesignElement> elements)
    {
        if (elements.Count == 0)
        {
            return Invariant($"has no elements in track '{name}'");
        }

        foreach (var e in elements)
        {
            if (!(e.Length is > 0 and <= TrackLayer.LongestTrack))
            {
                return Invariant($"has a track element of length {e.Length} in '{name}'; above 0 and at most {TrackLayer.LongestTrack:0} mm is taken");
            }

            if (!(Math.Max(Math.Abs(e.X), Math.Abs(e.Y)) <= 2 * TrackLayer.LongestTrack && Math.Abs(e.Heading) <= TrackLayer.LongestTrack
                && Math.Max(Math.Abs(e.StartCurvature), Math.Abs(e.EndCurvature)) <= 1 / TightestRadius))
            {
                return Invariant($"has an element of track '{name}' beyond {2 * TrackLayer.LongestTrack:0} mm, or with a radius under {TightestRadius} mm");
            }
        }

        double length = elements.Sum(e => e.Length);
        return length <= TrackLayer.LongestTrack ? null : Invariant($"has {length:G6} mm of track '{name}'; at most {TrackLayer.LongestTrack:0} mm is taken");
    }

    private static string? OfVehicles(DesignTrack track) =>
        track.Vehicles.FirstOrDefault(v => v.Sill is { HalfWidth: not (> 0 and <= LargestAllowance) }) is { } odd
            ? Invariant($"has a door sill {odd.Sill!.HalfWidth:0.###} mm from the middle of '{odd.Name}' on track '{track.Name}'")
        : track.Vehicles.SelectMany(VehicleRule.Findings).FirstOrDefault() is { } fault
        ? Invariant($"has an impossible vehicle on track '{track.Name}': {fault.Message.TrimEnd('.')}") : null;

    private static string? OfPlatform(DesignPlatform platform)
    {
        var face = platform.Face;
        double[] allowances = [platform.Budget.Play.Wheelset, platform.Budget.Play.Pivot, platform.Budget.Play.Roll, platform.Budget.Play.Cant,
            platform.Budget.Play.RollCentreHeight, platform.Height, face.VerticalGap, .. platform.Budget.Lines.Select(l => l.AmountMm)];
        return OfLine(face.Track, platform.Chart)
            ?? (!(face.From >= -TrackLayer.LongestTrack && face.From < face.To && face.To <= TrackLayer.LongestTrack)
                ? Invariant($"has platform '{platform.Name}' from {face.From} to {face.To:0.####} mm")
            : !allowances.All(a => a is >= 0 and <= LargestAllowance)
            ? Invariant($"has a height, a play or an allowance below nothing or beyond {LargestAllowance:0} mm at platform '{platform.Name}'")
            : platform.Deck is { } deck && !IsSurface(deck) ? Invariant($"has a walking surface of platform '{platform.Name}' that is none")
            : null);
    }

    // Planes between rising breaks, and what stands over them with an outline and a height.
    private static bool IsSurface(DesignDeck deck) => deck.Planes.Count > 0 && deck.Breaks.Count == deck.Planes.Count + 1
        && deck.Breaks.Zip(deck.Breaks.Skip(1)).All(b => b.First < b.Second)
        && deck.Stands.All(s => s.Rise is > 0 and <= LargestAllowance && Bounded(s.Ring, 2 * TrackLayer.LongestTrack));

    private static string? Twice(IEnumerable<string> names) => names.GroupBy(n => n, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1)?.Key;

    private static bool Bounded(IReadOnlyList<Point2> ring, double most)
    {
        double area = 0;
        for (int i = 0; i < ring.Count; i++)
        {
            area += Point2.Cross(ring[i], ring[(i + 1) % ring.Count]);
        }

        return ring.Count >= 3 && area != 0 && ring.All(p => Math.Max(Math.Abs(p.X), Math.Abs(p.Y)) <= most);
    }
}
