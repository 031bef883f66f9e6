using PlatformForge.Platforms.Specs;
using PlatformForge.Solids.Bodies.Layers;

namespace PlatformForge.Solids.Bodies.Trestles;

/// <summary>How a brace lies in its bay, mm: from the face of the post that it rises from.</summary>
/// <param name="Foot">Height of its lower side there, over the baseboard.</param>
/// <param name="Rise">Of it to its run: 1 is 45 degrees.</param>
/// <param name="Run">To where its lower side meets the cap's underside: all of the bay, or less.</param>
/// <param name="Deep">Its depth, upright.</param>
public sealed record BraceLine(double Foot, double Rise, double Run, double Deep)
{
    /// <summary>Least rise of a brace to its run: 45 degrees, so that printed deck down nothing of it hangs free.</summary>
    public const double LeastRise = 1;

    // How far a brace reaches into its post, as a share of it; what it keeps over the baseboard there, mm.
    private const double IntoPost = 0.25, OverFoot = 0.1;

    /// <summary>How far a brace reaches into its post, mm.</summary>
    public static double Into(TrestleSpec spec) => IntoPost * spec.Post;

    /// <summary>The brace of a bay: it rises at 45 degrees, or steeper where the next post is nearer than that takes. Null where the bay is too low for
    /// one.</summary>
    /// <param name="spec">The trestle.</param>
    /// <param name="wide">Clear room between two posts.</param>
    /// <param name="under">Height of the cap's underside.</param>
    /// <param name="fall">What the deck falls by across the platform, of its run: the bed that the bent is printed on lies as the deck does.</param>
    public static BraceLine? Of(TrestleSpec spec, double wide, double under, double fall = 0)
    {
        // The foot keeps its lower side over the baseboard, within the post too.
        double least = LeastOver(Math.Abs(fall)), foot = spec.Sill + (Math.Max(least, under / wide) * Into(spec)) + OverFoot, high = under - foot;
        double rise = Math.Max(least, high / wide);
        return high <= spec.Brace ? null : new(foot, rise, high / rise, Upright(spec, rise));
    }

    /// <summary>A brace along the platform, from a post to the bearer: as one of a bent, but what it rises to may slope, and so may the bed that it is
    /// printed on, which lies as the deck does. Null where the bay is too low for one.</summary>
    /// <param name="spec">The trestle.</param>
    /// <param name="wide">Clear room between two posts.</param>
    /// <param name="soffit">The bearer's underside, from the face of the post that the brace rises from.</param>
    public static BraceLine? Along(TrestleSpec spec, double wide, Soffit soffit)
    {
        bool isKnee = spec.Longitudinal == LongitudinalForm.Knee;
        double end = isKnee ? Math.Min(spec.Knee, wide / 2) : wide, least = LeastOver(soffit.Steepest), over = spec.Sill + OverFoot, into = Into(spec);
        double foot = over + (Math.Max(least, soffit.At(wide) / wide) * into), rise = Math.Max(least, (soffit.At(wide) - foot) / wide);
        if (isKnee && soffit.At(end) - (least * end) > over + (least * into))
        {
            (foot, rise) = (soffit.At(end) - (least * end), least);
        }

        double deep = Upright(spec, rise);
        return soffit.At(0) - foot <= spec.Brace ? null : new(foot, rise, Math.Min(end, soffit.Met(foot, rise) ?? end), deep);
    }

    // Rise that is 45 degrees over a deck that rises the same way by so much.
    private static double LeastOver(double grade) => Math.Max(LeastRise, (1 + grade) / (1 - grade));

    // Upright depth of a brace of its thickness square to it.
    private static double Upright(TrestleSpec spec, double rise) => spec.Brace * Math.Sqrt(1 + (rise * rise));
}
