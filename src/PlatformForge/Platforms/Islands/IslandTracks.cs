using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Islands;

/// <summary>An island as each of its faces sees it, before anything is swept.</summary>
/// <param name="First">The platform with its first face first.</param>
/// <param name="Second">The same with its second face first, the ends of that about where they will lie.</param>
public sealed record IslandSpecs(PlatformSpec First, PlatformSpec Second);

/// <summary>Finds the stretch of a second track that lies across from a first face.</summary>
public static class IslandTracks
{
    // The distance between two tracks is looked at this often along a platform.
    private const int Looks = 40;

    /// <summary>Both views of an island, or why there is no island between two tracks.</summary>
    /// <param name="spec">What is asked for, its first face along that track's chart.</param>
    /// <param name="chart">The first track.</param>
    /// <param name="other">The second track.</param>
    public static Outcome<IslandSpecs> Across(PlatformSpec spec, Centreline chart, Centreline other)
    {
        var (face, second) = (spec.Face, spec.OtherFace! with { Key = FaceSpec.OtherKey });
        string key = $"{spec.Key}.{FaceSpec.OtherKey}";
        if (second.Track == face.Track)
        {
            return Outcome.Fault<IslandSpecs>(IslandFindings.SameTrack(key, face.Track));
        }

        var met = Enumerable.Range(0, Looks + 1).Select(i => Meet(face, chart, other, face.From + ((face.To - face.From) * i / Looks))).ToArray();
        if (met.Any(m => m is null))
        {
            return Outcome.Fault<IslandSpecs>(IslandFindings.NoMeeting(key, face, second));
        }

        // The platform lies on the side of the second track on which the first track is.
        bool right = met.All(m => second.Side.Reach(m!.Value.Offset) > 0);
        if (!right)
        {
            return Outcome.Fault<IslandSpecs>(IslandFindings.WrongSide(key, face, second));
        }

        double from = Math.Min(met[0]!.Value.Chainage, met[^1]!.Value.Chainage), to = Math.Max(met[0]!.Value.Chainage, met[^1]!.Value.Chainage);
        double widest = met.Max(m => m!.Value.Distance);
        var deck = spec.Deck with { Width = widest };
        bool reversed = met[0]!.Value.Chainage > met[^1]!.Value.Chainage;
        var first = spec with { Deck = deck, OtherFace = second with { From = from, To = to } };
        return Outcome.Of(new IslandSpecs(first, first.WithFeatures(_ => null) with
        {
            Face = second with { From = from, To = to },
            OtherFace = face,
            StartRamp = reversed ? spec.EndRamp : spec.StartRamp,
            EndRamp = reversed ? spec.StartRamp : spec.EndRamp,
            ForcedCuts = [],
            BaseboardJoints = [],
        }));
    }

    // Where the line across at a chainage of the first track meets the middle of the second, how far away, and on which side of the second the first
    // track then is.
    private static (double Chainage, double Distance, double Offset)? Meet(FaceSpec face, Centreline chart, Centreline other, double s)
    {
        var line = CrossLine.At(chart, face.Side, s);
        double guess = other.Locate(line.Origin).Chainage;
        if (line.Meet(other, Side.Left, _ => 0, guess) is not { } met || met < 0
            || met > other.Length || line.Reach(other.PointAt(met)) is not (> 0 and var distance))
        {
            return null;
        }

        return (met, distance, other.Locate(line.Origin, met).Offset);
    }
}
