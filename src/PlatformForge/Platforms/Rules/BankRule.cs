using PlatformForge.Masonry;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Rules;

/// <summary>What of a platform's back can be told before anything is planned.</summary>
internal static class BankRule
{
    /// <summary>Flattest angle, degrees, between a bank's face and the deck at which it prints without supports on its deck or upright: what
    /// hangs free is measured from here on too.</summary>
    private const double FlattestAngle = 43.05;

    // Least height of a bank at a ramp's foot, mm: what lies lower is no bank.
    private const double LeastBank = 1;

    /// <summary>The flattest slope that prints with a section, as n of 1 in n: 45 degrees, or steeper where the deck falls towards it.</summary>
    public static double Flattest(DeckSpec deck)
    {
        double fall = deck.Crossfall > 0 ? Math.Atan(1 / deck.Crossfall) : 0;
        return Math.Min(1, Math.Floor(100 / Math.Tan((FlattestAngle * Math.PI / 180) + fall)) / 100);
    }

    public static void Check(PlatformSpec spec, PlatformSite site, List<Finding> findings)
    {
        var (back, key) = (spec.Back, spec.Key + ".back");
        if (spec.IsIsland)
        {
            if (!back.ShowsWall || back.Strip is not null)
            {
                findings.Add(BankFindings.NoBack(key));
            }

            return;
        }

        if (back.Retaining is not null && (back.Kind == BackKind.Bank || back.Kerb is not null))
        {
            findings.Add(BankFindings.TwoThings($"{key}.{(back.Kerb is null ? "retaining" : "kerb")}", back.Kerb is null ? "bank" : "kerb"));
        }

        if (back.ShowsWall)
        {
            return;
        }

        Nothing(spec, findings);
        if (back.Kind == BackKind.Bank)
        {
            double flattest = Flattest(spec.Deck), lowest = Lowest(spec, site) - LeastBank;
            if (!back.Apart && back.Slope > flattest + Tolerances.Rounding)
            {
                findings.Add(BankFindings.TooFlat(key + ".slope", back.Slope, flattest));
            }

            if (back.Ground > lowest)
            {
                findings.Add(BankFindings.GroundTooHigh(key + ".ground", back.Ground, Math.Max(0, Math.Floor(lowest * 10) / 10)));
            }
        }
    }

    // The lowest height of the deck's back edge, about: on a curve a ramp's foot is not quite level.
    private static double Lowest(PlatformSpec spec, PlatformSite site)
    {
        double fall = spec.Deck.Crossfall > 0 ? spec.Deck.Width / spec.Deck.Crossfall : 0;
        double[] feet = [.. new[] { spec.StartRamp, spec.EndRamp }.OfType<RampSpec>().Select(r => r.FootHeight ?? 0)];
        return site.RailTop + feet.Append(spec.Height).Min() - fall;
    }

    // What is asked for of a wall that there is not.
    private static void Nothing(PlatformSpec spec, List<Finding> findings)
    {
        if (spec.Facing is not { } facing)
        {
            return;
        }

        if (facing.StatesBack && facing.StatedBack != WallFinish.Plain)
        {
            findings.Add(BankFindings.NoWall($"{spec.Key}.facing.back", "a facing", Cure.LeaveOut($"{spec.Key}.facing.back")));
        }

        if (facing.Piers is { On: PierWalls.Back })
        {
            findings.Add(BankFindings.NoWall($"{spec.Key}.facing.piers.on", "piers", Cure.Text($"{spec.Key}.facing.piers.on", "front")));
        }

        for (int i = 0; i < facing.Openings.Count; i++)
        {
            if (facing.Openings[i].IsBack)
            {
                string opening = PlatformFindings.Indexed(spec.Key + ".facing", "opening", i) + ".on";
                findings.Add(BankFindings.NoWall(opening, "openings", Cure.Text(opening, "front")));
            }
        }
    }
}
