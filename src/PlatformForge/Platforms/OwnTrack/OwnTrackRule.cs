using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Rules;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.OwnTrack;

/// <summary>
/// A track that runs on round a loop may come back beside the platform that it serves. There the platform's outline is held against what vehicles sweep and
/// the face's budget, as its edge is where it serves (PF4029); what is offered was planned and held in the same way.
/// </summary>
internal static class OwnTrackRule
{
    // Each try takes off what still stands in the way; widths in these steps, ends in whole mm.
    private const int Tries = 6;
    private const double Grid = 0.01;

    // Of a platform this much is left at least, mm.
    private const double LeastLength = 20;

    /// <summary>A plan, or the fault where a face's own track comes back too near to it.</summary>
    /// <param name="outcome">The plan, with what else was found.</param>
    /// <param name="faces">What it was planned from, a request a face.</param>
    /// <param name="again">The plan of another spec of the same platform; null where there is none.</param>
    public static Outcome<PlatformPlan> Held(
        Outcome<PlatformPlan> outcome, IReadOnlyList<PlatformRequest> faces, Func<PlatformSpec, PlatformPlan?> again)
    {
        if (outcome.Value is not { } plan)
        {
            return outcome;
        }

        var findings = new List<Finding>();
        var fouled = Fouled(faces, plan, findings);
        if (fouled.Count > 0)
        {
            findings.Add(Told(faces[0].Spec, plan, fouled, s => again(s) is { } other ? Fouled(faces, other, []) : null));
        }

        return findings.Count == 0 ? outcome : Outcome.Fault<PlatformPlan>([.. outcome.Findings, .. findings]);
    }

    private static List<FouledPlace> Fouled(IReadOnlyList<PlatformRequest> faces, PlatformPlan plan, List<Finding> findings) =>
        [.. faces.SelectMany((f, i) => TrackBack.Fouled(f, plan.Faces[i], plan, findings))];

    private static Finding Told(PlatformSpec spec, PlatformPlan plan, List<FouledPlace> fouled, Func<PlatformSpec, List<FouledPlace>?> held)
    {
        var worst = fouled.MaxBy(f => f.Depth)!;
        double from = fouled.Min(f => f.Beside.Place.Chainage), to = fouled.Max(f => f.Beside.Place.Chainage);
        var (width, end) = (spec.IsIsland ? null : Narrower(spec, worst.Depth, held), Shorter(spec, (from, to), held));
        double length = spec.Face.To - spec.Face.From;
        bool widthFirst = width is { } w && !(end is { } e && e.Length * spec.Deck.Width > w * length);
        var ways = new List<(string Sentence, Cure Cure)>();
        if (width is { } narrow)
        {
            ways.Add((Invariant($"give a width of {narrow:0.##} mm or less"), Cure.Set($"{spec.Key}.deck.width", narrow)));
        }

        if (end is { } cut)
        {
            string key = $"{spec.FaceKey}.{(cut.IsEnd ? "to" : "from")}";
            ways.Insert(widthFirst ? ways.Count : 0,
                ((cut.IsEnd ? "end" : "begin") + Invariant($" the platform at chainage {cut.At:0}"), Cure.Set(key, cut.At)));
        }

        if (ways.Count == 0 && !spec.IsIsland && held(spec with { Face = spec.Face with { Side = spec.Face.Side.Opposite() } }) is { Count: 0 })
        {
            string other = spec.Face.Side.Of("right", "left");
            ways.Add(($"stand it on the track's other side (side = \"{other}\")", Cure.Text($"{spec.FaceKey}.side", other)));
        }

        string remedy = ways.Count == 0 ? "lay the track farther away there, or the platform elsewhere" : string.Join(", or ", ways.Select(x => x.Sentence));
        return PlatformFindings.TrackComesBack(
            ways.Count == 0 ? spec.FaceKey : ways[0].Cure.Key,
            (spec.Name, worst.Part.Track, worst.Part.Vehicle.Name, worst.Part.Part.Name),
            (worst.Depth, worst.Beside.Chainage, worst.Beside.Place.Chainage),
            to - from < 1 ? null : (from, to),
            (char.ToUpperInvariant(remedy[0]) + remedy[1..] + ".", ways.Count == 0 ? null : ways[0].Cure));
    }

    // The greatest width with which nothing stands in the way; null where none is left.
    private static double? Narrower(PlatformSpec spec, double lack, Func<PlatformSpec, List<FouledPlace>?> held)
    {
        double width = spec.Deck.Width, least = LeastDeck.Of(spec).Width;
        for (int i = 0; i < Tries; i++)
        {
            width = Math.Floor((width - lack) / Grid) * Grid;
            if (width < least || held(spec with { Deck = spec.Deck with { Width = width } }) is not { } left)
            {
                return null;
            }

            if (left.Count == 0)
            {
                return Math.Round(width, 2);
            }

            lack = Math.Max(left.Max(f => f.Depth), Grid);
        }

        return null;
    }

    // The longest platform that ends before all that stands in the way, or begins after it.
    private static (bool IsEnd, double At, double Length)? Shorter(PlatformSpec spec, (double From, double To) way, Func<PlatformSpec, List<FouledPlace>?> held)
    {
        var face = spec.Face;
        (bool IsEnd, double At, double Length)? best = null;
        foreach (bool isEnd in (bool[])[true, false])
        {
            double at = isEnd ? Math.Ceiling(way.From) - 1 : Math.Floor(way.To) + 1;
            for (int i = 0; i < Tries && (isEnd ? at - face.From : face.To - at) is var length && length >= LeastLength && !(best?.Length >= length); i++)
            {
                if (held(spec with { Face = isEnd ? face with { To = at } : face with { From = at } }) is not { } left)
                {
                    break;
                }

                if (left.Count == 0)
                {
                    best = (isEnd, at, length);
                    break;
                }

                at = isEnd ? Math.Min(at - 1, Math.Ceiling(left.Min(f => f.Beside.Place.Chainage)) - 1)
                    : Math.Max(at + 1, Math.Floor(left.Max(f => f.Beside.Place.Chainage)) + 1);
            }
        }

        return best;
    }
}
