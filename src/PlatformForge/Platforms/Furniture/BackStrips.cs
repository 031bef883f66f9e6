using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;

namespace PlatformForge.Platforms.Furniture;

/// <summary>
/// A retaining wall or a kerb along the back: a strip beside the level deck, and one beside each ramp where that is asked for, so that none is bent. Behind its
/// rebate a lip of the deck stays, or the rebate's floor would hang free where the deck is printed face down.
/// </summary>
internal static class BackStrips
{
    // A strip beside a ramp that is shorter than this, mm, is left out: a crumb (common practice, no source).
    private const double Shortest = 5;

    public static IEnumerable<LineBand> Of(PlatformSpec spec, FacePlan face, BodyPlan body)
    {
        if (spec.IsIsland || spec.Back.Strip is not { } strip)
        {
            yield break;
        }

        var profile = face.Profile;
        PlanLine near = body.Back.Shifted(-BackSpec.Lip - strip.Taken), far = body.Back.Shifted(-BackSpec.Lip);
        if (profile.EndHead > profile.StartHead)
        {
            yield return new(profile.StartHead, profile.EndHead, near, far, strip.Make);
        }

        bool isKerb = spec.Back is { Retaining: null, Kerb.Ramps: true };
        if (!isKerb && (spec.Back.Retaining?.Ramps ?? RampWall.None) == RampWall.None)
        {
            yield break;
        }

        double fall = spec.Deck.Crossfall > 0 ? (spec.Deck.Width - BackSpec.Lip - strip.Taken) / spec.Deck.Crossfall : 0;
        bool isLevel = !isKerb && spec.Back.Retaining!.Ramps == RampWall.Level;
        foreach (var (foot, head) in new[] { (profile.From, profile.StartHead), (profile.To, profile.EndHead) })
        {
            double end = Deep(profile, foot, head, fall + strip.Make.Depth + LineMake.LeastFloor);
            if (Math.Abs(head - end) >= Shortest)
            {
                var made = isLevel ? Raised(strip.Make, profile.Level - fall, profile.At(end) - fall) : strip.Make;
                yield return new(Math.Min(end, head), Math.Max(end, head), near, far, made);
            }
        }
    }

    // From where on a ramp its rebate has a floor over the baseboard: its foot, or farther up.
    private static double Deep(HeightProfile profile, double foot, double head, double least)
    {
        double low = profile.At(foot), lack = least - low;
        return lack <= 0 || head == foot ? foot : foot + ((head - foot) * Math.Min(1, lack / (profile.Level - low)));
    }

    // Level on over a ramp: at its foot it stands higher over the deck by what the ramp falls.
    private static LineMake Raised(LineMake make, double level, double lowest) => make with
    {
        Rise = make.Rise + level - lowest,
        Wall = make.Wall! with { LevelTop = level + make.Rise },
    };
}
