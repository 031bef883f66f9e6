using PlatformForge.Geometry;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
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
    // A coping this far above rails is one, mm.
    private const double LeastHeight = 0.5;

    // The distance between two tracks is looked at this often along a platform.
    private const int Looks = 40;

    // Lines across are told by lines so far from the middle of either track, mm at full size: about where the edges are.
    private const double UsualReach = 5 * FullSize.Foot;

    /// <summary>Both views of an island, or why there is no island between two tracks.</summary>
    /// <param name="spec">What is asked for, its first face along that track's chart.</param>
    /// <param name="chart">The first track.</param>
    /// <param name="other">The second track.</param>
    /// <param name="site">What it stands on, by the rails of the first track.</param>
    /// <param name="there">The same by the rails of the second; null where they are as high.</param>
    public static Outcome<IslandSpecs> Across(PlatformSpec spec, Centreline chart, Centreline other, PlatformSite site, PlatformSite? there = null)
    {
        double above = (there ?? site).RailTop - site.RailTop;
        var (face, second) = (spec.Face, spec.OtherFace! with { Key = FaceSpec.OtherKey });
        string key = $"{spec.Key}.{FaceSpec.OtherKey}";
        if (second.Track == face.Track)
        {
            return Outcome.Fault<IslandSpecs>(IslandFindings.SameTrack(key, face.Track));
        }

        if (spec.Height - above < LeastHeight)
        {
            return Outcome.Fault<IslandSpecs>(IslandFindings.BelowRails(spec, spec.Height - above, LeastHeight));
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

        var ladder = Ladder(face, chart, second, other, site);
        if (ladder.Across(face.From) is not { } start || ladder.Across(face.To) is not { } end || start < 0 || end < 0 || start > other.Length
            || end > other.Length)
        {
            return Outcome.Fault<IslandSpecs>(IslandFindings.NoMeeting(key, face, second));
        }

        second = second with { From = Math.Min(start, end), To = Math.Max(start, end) };
        var first = spec with { Deck = spec.Deck with { Width = met.Max(m => m!.Value.Distance) }, OtherFace = second };
        return Outcome.Of(new IslandSpecs(first, Turned(first.WithFeatures(_ => null), second, face, start > end, above)
            with
        { ForcedCuts = [], BaseboardJoints = [] }));
    }

    /// <summary>Which places of both tracks lie across from one another.</summary>
    internal static CrossLadder Ladder(FaceSpec face, Centreline chart, FaceSpec second, Centreline other, PlatformSite site,
        IReadOnlyList<(double, double)>? pins = null)
    {
        double reach = site.Scale.ToModel(UsualReach);
        return new(new(chart, face.Side, reach), new(other, second.Side, reach), pins);
    }

    /// <summary>An island with its second face first, its heights above that face's rails.</summary>
    /// <param name="spec">The island.</param>
    /// <param name="second">Its second face.</param>
    /// <param name="first">Its first face.</param>
    /// <param name="reversed">Whether the second track runs the other way.</param>
    /// <param name="above">How much higher the second track's rails lie, mm.</param>
    internal static PlatformSpec Turned(PlatformSpec spec, FaceSpec second, FaceSpec first, bool reversed, double above)
    {
        RampSpec? Told(RampSpec? ramp) => ramp?.FootHeight is { } foot ? ramp with { FootHeight = foot - above } : ramp;
        var returns = (reversed, spec.Coping.Returns) switch
        {
            (true, CopingReturns.Start) => CopingReturns.End,
            (true, CopingReturns.End) => CopingReturns.Start,
            _ => spec.Coping.Returns,
        };
        return spec with
        {
            Coping = spec.Coping with { Returns = returns },
            Face = second,
            OtherFace = first,
            Height = spec.Height - above,
            StartRamp = Told(reversed ? spec.EndRamp : spec.StartRamp),
            EndRamp = Told(reversed ? spec.StartRamp : spec.EndRamp),
        };
    }

    // Where the line across from a chainage of the first track meets the middle of the second, how far away, and on which side of the second the first track
    // then is.
    private static (double Chainage, double Distance, double Offset)? Meet(FaceSpec face, Centreline chart, Centreline other, double s)
    {
        var ladder = new CrossLadder(new(chart, face.Side, 0), new(other, face.Side, 0));
        if (ladder.Across(s) is not { } met || met < 0 || met > other.Length)
        {
            return null;
        }

        TrackFrame one = chart.At(s), two = other.At(met);
        var join = two.Position - one.Position;
        return Point2.Dot(join, face.Side.Outward(one.Tangent)) > 0 ? (met, join.Length, Point2.Cross(join, two.Tangent)) : null;
    }
}
