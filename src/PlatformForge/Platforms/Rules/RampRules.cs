using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Rules;

/// <summary>Works out ramps by length or by gradient and the height along the platform.</summary>
internal static class RampRules
{
    /// <summary>Steepest gradient published for people on foot, as n of 1 in n (W. H. Mills, Railway Construction, 1898, for ramps of subways; quoted for
    /// platforms too).</summary>
    public const double SteepestPublished = 8;

    public static HeightProfile Profile(PlatformSpec spec, PlatformSite site, List<Finding> findings)
    {
        double start = Length(
            spec,
            site,
            spec.StartRamp,
            $"{spec.Key}.ramps.start",
            findings), end = Length(spec, site, spec.EndRamp, $"{spec.Key}.ramps.end", findings);
        var face = spec.Face;
        double length = face.To - face.From, level = site.RailTop + spec.Height;
        if (length > 0 && start + end > length)
        {
            double falls = Fall(spec, spec.StartRamp) + Fall(spec, spec.EndRamp);
            findings.Add(PlatformFindings.RampsTooLong($"{spec.Key}.ramps", start, end, length, length / falls));
        }

        return new(face.From, face.From + start, face.To - end, face.To, level - Fall(spec, spec.StartRamp), level, level - Fall(spec, spec.EndRamp));
    }

    private static double Fall(PlatformSpec spec, RampSpec? ramp) => ramp is null ? 0 : spec.Height - (ramp.FootHeight ?? 0);

    /// <summary>The platform with feet for its ramps that have none stated: at rail top, or where the deck is just over the baseboard if that is
    /// higher.</summary>
    public static PlatformSpec Settled(PlatformSpec spec, PlatformSite site)
    {
        double lowest = Lowest(spec, site);
        RampSpec? Footed(RampSpec? ramp) => ramp is { FootHeight: null } ? ramp with { FootHeight = lowest > 0 && double.IsFinite(lowest) ? lowest : 0 } : ramp;
        return spec with { StartRamp = Footed(spec.StartRamp), EndRamp = Footed(spec.EndRamp) };
    }

    // Lowest foot above rail top, mm.
    private static double Lowest(PlatformSpec spec, PlatformSite site)
    {
        double drop = spec.Deck.Crossfall > 0 ? spec.Deck.Width / spec.Deck.Crossfall : 0;
        return Math.Max(spec.Deck.Thickness + drop, spec.Coping.Thickness) - site.RailTop;
    }

    private static double Length(PlatformSpec spec, PlatformSite site, RampSpec? ramp, string key, List<Finding> findings)
    {
        if (ramp is null)
        {
            return 0;
        }

        if (ramp.Length is null == ramp.Gradient is null)
        {
            findings.Add(PlatformFindings.RampOneOfTwo(key, ramp.Length is not null));
            return 0;
        }

        double fall = Fall(spec, ramp), lowest = Lowest(spec, site);
        if (!(fall > 0) || (ramp.FootHeight ?? 0) < lowest)
        {
            findings.Add(PlatformFindings.RampFoot($"{key}.foot", ramp.FootHeight ?? 0, lowest, spec.Height));
            return 0;
        }

        double length = ramp.Length ?? fall * ramp.Gradient!.Value;
        if (length / fall < SteepestPublished * (1 - Rounding))
        {
            findings.Add(PlatformFindings.SteepRamp(key, length / fall, fall * SteepestPublished));
        }

        return length;
    }

    /// <summary>
    /// On a curve a ramp's plane goes on falling towards the back: the deck has to fit over the baseboard there too.
    /// </summary>
    public static void Feet(PlatformPlan plan, List<Finding> findings)
    {
        foreach (var (ramp, s, name) in new[] { (plan.Spec.StartRamp, plan.Profile.From, "start"), (plan.Spec.EndRamp, plan.Profile.To, "end") })
        {
            if (ramp is null)
            {
                continue;
            }

            double lack = Lack(plan, s), foot = ramp.FootHeight ?? 0;
            if (lack > 0)
            {
                findings.Add(PlatformFindings.RampFoot($"{plan.Spec.Key}.ramps.{name}.foot", foot, foot + lack, plan.Spec.Height));
            }
        }
    }

    /// <summary>A platform whose feet that nobody stated are raised by what they lack at the back; null where they lack nothing.</summary>
    /// <param name="asked">The platform as asked for.</param>
    /// <param name="plan">The same with settled feet, planned.</param>
    public static PlatformSpec? Raised(PlatformSpec asked, PlatformPlan plan)
    {
        RampSpec? Footed(RampSpec? ramp, RampSpec? settled, double s) =>
            ramp is { FootHeight: null } && Lack(plan, s) is > 0 and var lack ? settled! with { FootHeight = settled.FootHeight + lack + Clear } : settled;
        var raised = plan.Spec with
        {
            StartRamp = Footed(asked.StartRamp, plan.Spec.StartRamp, plan.Profile.From),
            EndRamp = Footed(asked.EndRamp, plan.Spec.EndRamp, plan.Profile.To),
        };
        return raised == plan.Spec ? null : raised;
    }

    // What the deck at the back of a ramp's foot would lie below the baseboard, mm.
    private static double Lack(PlatformPlan plan, double end) => plan.Spec.Deck.Thickness - plan.TopAt(end, plan.Back.At(end));

    // A foot that is raised changes the ramp's length, and so a little what it lacks, mm.
    private const double Clear = 0.05;

    // Relative rounding of a gradient worked out from a length.
    private const double Rounding = Tolerances.Rounding;
}
