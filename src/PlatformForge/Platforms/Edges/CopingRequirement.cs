using PlatformForge.Clearance;
using PlatformForge.Track;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.Edges;

/// <summary>
/// Reads out of an envelope what the coping has to stay clear of, on the envelope's own stations.
/// </summary>
internal static class CopingRequirement
{
    /// <summary>
    /// The trace from the station at or before the platform to the one at or after it. A place that no vehicle of the faced track reaches on the
    /// platform's side has negative infinity.
    /// </summary>
    public static RequirementTrace Trace(PlatformRequest request, HeightProfile profile)
    {
        var (envelope, face) = (request.Envelope, request.Spec.Face);
        int first = (int)Math.Floor(((face.From - envelope.From) / envelope.Spacing) + Rounding);
        int last = (int)Math.Ceiling(((face.To - envelope.From) / envelope.Spacing) - Rounding);
        if (first < 0 || last >= envelope.Count)
        {
            throw new BrokenInvariantException(Invariant($"Platforms: the envelope covers chainage {envelope.From} and {envelope.Count} stations of {envelope.Spacing} mm, the platform goes from {face.From} to {face.To}."));
        }

        int count = last - first + 1;
        var stations = new double[count];
        var swept = new double[count];
        var parts = new int[count];
        for (int i = 0; i < count; i++)
        {
            stations[i] = envelope.From + ((first + i) * envelope.Spacing);
        }

        Array.Fill(swept, double.NegativeInfinity);
        Array.Fill(parts, -1);
        var heights = Heights(request, profile, stations);
        for (int part = 0; part < envelope.Parts.Count; part++)
        {
            if (envelope.Parts[part].IsFaced)
            {
                Raise(swept, parts, envelope.Parts[part], part, first, face.Side, (i, reach) => heights[i].Counted(envelope.Parts[part], reach));
            }
        }

        double halfPlatform = request.Budget.Margin + (request.Spec.Deck.Width / 2);
        double[] own = [.. swept];
        for (int part = 0; part < envelope.Parts.Count; part++)
        {
            var other = envelope.Parts[part];
            if (!other.IsFaced && other.Track != request.Spec.OtherFace?.Track)
            {
                // What runs past a second face is held off by that face.
                var (near, far) = Sides(other, face.Side);
                Raise(swept, parts, other, part, first, face.Side, (i, reach) => Middle(far[first + i], near[first + i]) < own[i] + halfPlatform ? heights[i].Counted(other, reach) : double.NegativeInfinity);
            }
        }

        envelope.KeepGoverning(swept, parts, (part, i) => envelope.Parts[part].IsFaced ? heights[i].Counted(envelope.Parts[part], envelope.Parts[part].Towards(face.Side)[first + i]) : double.NegativeInfinity);
        return Named(envelope, stations, swept, parts, request.Budget.Margin) with
        {
            AtWall = [.. parts.Select((part, i) => part >= 0 && heights[i].StaysUnder(envelope.Parts[part]))],
            Kept = BudgetDisc.Roll(stations, swept, request.Budget.Margin, s => face.Side.Bend(request.Chart.CurvatureAt(s))),
        };
    }

    /// <summary>
    /// Nearest place in mm from the centreline, on the platform's side, of vehicles on other tracks that run behind the platform, at a station of the trace, and
    /// the vehicle; positive infinity where none does.
    /// </summary>
    public static (double[] Nearest, string[] Vehicles) Behind(PlatformRequest request, RequirementTrace trace)
    {
        var (envelope, face) = (request.Envelope, request.Spec.Face);
        int first = (int)Math.Round((trace.Stations[0] - envelope.From) / envelope.Spacing);
        var nearest = new double[trace.Stations.Length];
        var vehicles = new string[nearest.Length];
        Array.Fill(nearest, double.PositiveInfinity);
        Array.Fill(vehicles, "");
        foreach (var other in envelope.Parts.Where(p => !p.IsFaced))
        {
            var (near, far) = Sides(other, face.Side);
            for (int i = 0; i < nearest.Length; i++)
            {
                if (!double.IsNegativeInfinity(far[first + i]) && -near[first + i] > trace.Swept[i] && -near[first + i] < nearest[i])
                {
                    (nearest[i], vehicles[i]) = (-near[first + i], other.Vehicle.Name);
                }
            }
        }

        return (nearest, vehicles);
    }

    /// <summary>Reach in mm of every part of the faced track's vehicles at a station of the trace, over all heights: what furniture is held to.</summary>
    public static double[] FullHeight(PlatformRequest request, RequirementTrace trace)
    {
        var (envelope, face) = (request.Envelope, request.Spec.Face);
        int first = (int)Math.Round((trace.Stations[0] - envelope.From) / envelope.Spacing);
        return envelope.Composite(face.Side).Reach.AsSpan(first, trace.Stations.Length).ToArray();
    }

    // Shares of a station's spacing below this are rounding.
    private const double Rounding = Tolerances.Rounding;

    /// <summary>
    /// Heights that meet the edge, per station. Where they change along a ramp, a station takes those of its neighbours too, so that a part counts on all of a stretch in which
    /// it first counts.
    /// </summary>
    private static HeldHeights[] Heights(PlatformRequest request, HeightProfile profile, double[] stations)
    {
        var heights = new HeldHeights[stations.Length];
        double[] tops = Array.ConvertAll(stations, s => profile.At(s) - request.Site.RailTop);
        for (int i = 0; i < heights.Length; i++)
        {
            double before = tops[Math.Max(0, i - 1)], after = tops[Math.Min(tops.Length - 1, i + 1)];
            heights[i] = HeldHeights.Over(request.Spec, Math.Min(tops[i], Math.Min(before, after)), Math.Max(tops[i], Math.Max(before, after)));
        }

        return heights;
    }

    private static void Raise(double[] swept, int[] parts, PartReach reach, int part, int first, Side side, Func<int, double, double> counted)
    {
        double[] own = reach.Towards(side);
        for (int i = 0; i < swept.Length; i++)
        {
            if (own[first + i] > swept[i] && counted(i, own[first + i]) is var least && least > swept[i])
            {
                (swept[i], parts[i]) = (least, part);
            }
        }
    }

    private static (double[] Near, double[] Far) Sides(PartReach part, Side side) =>
        (part.Towards(side.Opposite()), part.Towards(side));

    // A part lies between −near and far on the platform's side.
    private static double Middle(double far, double near) => (far - near) / 2;

    private static RequirementTrace Named(SweptEnvelope envelope, double[] stations, double[] swept, int[] parts, double margin)
    {
        var vehicles = envelope.Parts.Select(p => (p.Run, p.OtherTrack, p.Vehicle.Name)).Distinct().ToList();
        var governing = new int[parts.Length];
        var names = new string[parts.Length];
        for (int i = 0; i < parts.Length; i++)
        {
            var part = parts[i] < 0 ? null : envelope.Parts[parts[i]];
            governing[i] = part is null ? -1 : vehicles.IndexOf((part.Run, part.OtherTrack, part.Vehicle.Name));
            names[i] = part?.Part.Name ?? "";
        }

        return new(stations, swept, margin, governing, names, [.. vehicles.Select(v => v.Name)]) { OtherTracks = [.. vehicles.Select(v => v.OtherTrack)] };
    }
}
