using PlatformForge.Platforms;

namespace PlatformForge.Solids.Bodies;

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
    public static BraceLine? Of(TrestleSpec spec, double wide, double under)
    {
        // The foot keeps its lower side over the baseboard, within the post too.
        double foot = spec.Sill + (Math.Max(LeastRise, under / wide) * Into(spec)) + OverFoot, high = under - foot;
        double rise = Math.Max(LeastRise, high / wide);
        return high <= spec.Brace ? null : new(foot, rise, high / rise, spec.Brace * Math.Sqrt(1 + (rise * rise)));
    }
}
