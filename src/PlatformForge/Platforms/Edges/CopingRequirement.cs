using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Platforms.Requests;
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
            throw new BrokenInvariantException(Invariant($"Platforms: the envelope covers chainage {envelope.From} and {envelope.Count} stations ")
                + Invariant($"of {envelope.Spacing} mm, the platform goes from {face.From} to {face.To}."));
        }

        // What stands beyond an end is near its corner too: the disc is rolled over that as well, as far as it is known.
        int around = (int)Math.Ceiling(HeldHeights.Beyond(request.Budget) / envelope.Spacing);
        int lead = Math.Min(around, first), count = lead + last - first + 1 + Math.Min(around, envelope.Count - 1 - last);
        var (stations, swept, parts, heights) = Reached(request, profile, first - lead, count);
        double[] kept = BudgetDisc.Roll(stations, swept, request.Budget.Margin, s => face.Side.Bend(request.Chart.CurvatureAt(s)));
        var own = lead..(lead + last - first + 1);
        (stations, swept, parts, heights) = (stations[own], swept[own], parts[own], heights[own]);
        envelope.KeepGoverning(swept, parts, (part, i) => envelope.Parts[part].IsFaced ? heights[i].Counted(
            envelope.Parts[part],
            envelope.Parts[part].Towards(face.Side)[first + i]) : double.NegativeInfinity);
        return Named(envelope, stations, swept, parts, request.Budget.Margin) with
        {
            AtWall = [.. parts.Select((part, i) => part >= 0 && heights[i].StaysUnder(envelope.Parts[part]))],
            Kept = kept[own],
        };
    }

    // How far vehicles reach as it counts for the coping, and which part does, at so many stations of the envelope.
    private static (double[] Stations, double[] Swept, int[] Parts, HeldHeights[] Heights) Reached(
        PlatformRequest request,
        HeightProfile profile,
        int first,
        int count)
    {
        var (envelope, face) = (request.Envelope, request.Spec.Face);
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

        RaiseOthers(request, swept, parts, first, heights);
        return (stations, swept, parts, heights);
    }

    // Vehicles on other tracks count where they run on this side of the platform; what runs past a second face is held off by that face.
    private static void RaiseOthers(PlatformRequest request, double[] swept, int[] parts, int first, HeldHeights[] heights)
    {
        var (envelope, side) = (request.Envelope, request.Spec.Face.Side);
        double halfPlatform = request.Budget.Margin + (request.Spec.Deck.Width / 2);
        double[] own = [.. swept];
        for (int part = 0; part < envelope.Parts.Count; part++)
        {
            var other = envelope.Parts[part];
            if (!other.IsFaced && other.Track != request.Spec.OtherFace?.Track)
            {
                var (near, far) = Sides(other, side);
                Raise(
                    swept,
                    parts,
                    other,
                    part,
                    first,
                    side,
                    (i, reach) => Middle(far[first + i], near[first + i]) < own[i] + halfPlatform ? heights[i].Counted(other, reach) : double.NegativeInfinity);
            }
        }
    }

    /// <summary>
    /// Nearest place in mm from the centreline, on the platform's side, of vehicles on other tracks that run behind the platform, at a station of the trace,
    /// and
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
    /// Heights that meet the edge, per station. Where they change along a ramp, a station takes those of all that is near it, so that a part counts wherever
    /// the coping that it
    /// meets is within the budget.
    /// </summary>
    private static HeldHeights[] Heights(PlatformRequest request, HeightProfile profile, double[] stations)
    {
        double near = request.Envelope.Spacing + Math.Max(0, request.Budget.Margin);
        return Array.ConvertAll(stations, s =>
        {
            double before = profile.At(s - near) - request.Site.RailTop, after = profile.At(s + near) - request.Site.RailTop,
                here = profile.At(s) - request.Site.RailTop;
            return HeldHeights.Over(request.Spec, Math.Min(here, Math.Min(before, after)), Math.Max(here, Math.Max(before, after)));
        });
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
        var vehicles = envelope.Parts.Select(p => new Passer(p.Run, p.OtherTrack, p.Vehicle.Name)).Distinct().ToList();
        var governing = new int[parts.Length];
        var names = new string[parts.Length];
        for (int i = 0; i < parts.Length; i++)
        {
            var part = parts[i] < 0 ? null : envelope.Parts[parts[i]];
            governing[i] = part is null ? -1 : vehicles.IndexOf(new(part.Run, part.OtherTrack, part.Vehicle.Name));
            names[i] = part?.Part.Name ?? "";
        }

        return new(stations, swept, margin, governing, names, [.. vehicles.Select(v => v.Name)]) { OtherTracks = [.. vehicles.Select(v => v.OtherTrack)] };
    }

    // A run of a vehicle, on the platform's track or another.
    private sealed record Passer(int Run, string OtherTrack, string Name);
}
