using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Rules.Findings;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Rules;

/// <summary>What of a platform's back can be told before anything is planned.</summary>
internal static class BankRule
{
    // Least height of a bank at a ramp's foot, mm: what lies lower is no bank.
    private const double LeastBank = 1;

    /// <summary>The flattest slope that prints with a section beside a level deck, as n of 1 in n: 45 degrees, or steeper where the deck falls
    /// towards it. What ramps and
    /// curves take of it is told when they are planned, see <see cref="BankAngleRule"/>.</summary>
    public static double Flattest(DeckSpec deck)
    {
        double fall = deck.Crossfall > 0 ? Math.Atan(1 / deck.Crossfall) : 0;
        return Math.Floor((100 / Math.Tan((BankAngleRule.LeastAngle * Math.PI / 180) + fall)) + Tolerances.Rounding) / 100;
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

            findings.AddRange(OpeningsBehind(spec).Select(BankFindings.NoBackWall));
            return;
        }

        if (back.Retaining is not null && (back.Kind == BackKind.Bank || back.Kerb is not null))
        {
            findings.Add(BankFindings.TwoThings($"{key}.{(back.Kerb is null ? "retaining" : "kerb")}", back.Kerb is null ? "bank" : "kerb"));
        }

        Returns(spec, findings);
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
                findings.Add(BankFindings.TooFlat(key + ".slope", back.Slope, flattest, Angle(back.Slope, spec.Deck)));
            }

            if (back.Ground > lowest)
            {
                findings.Add(BankFindings.GroundTooHigh(key + ".ground", back.Ground, Math.Max(0, Math.Floor(lowest * 10) / 10)));
            }
        }
    }

    // Between a bank's face and the deck, degrees.
    private static double Angle(double slope, DeckSpec deck) =>
        (Math.Atan(1 / slope) - (deck.Crossfall > 0 ? Math.Atan(1 / deck.Crossfall) : 0)) * 180 / Math.PI;

    // The lowest height of the deck's back edge, about: on a curve a ramp's foot is not quite level.
    private static double Lowest(PlatformSpec spec, PlatformSite site)
    {
        double fall = spec.Deck.Crossfall > 0 ? spec.Deck.Width / spec.Deck.Crossfall : 0;
        double[] feet = [.. new[] { spec.StartRamp, spec.EndRamp }.OfType<RampSpec>().Select(r => r.FootHeight ?? 0)];
        return site.RailTop + feet.Append(spec.Height).Min() - fall;
    }

    // Ends round which no bank turns: there is none, or a ramp comes down there, towards which a cone would lie flatter to the deck than prints, or its lines
    // across are askew.
    private static void Returns(PlatformSpec spec, List<Finding> findings)
    {
        var (back, key) = (spec.Back, spec.Key + ".back.returns");
        if (back.Returns == BankReturns.None)
        {
            return;
        }

        if (back.Kind != BackKind.Bank)
        {
            findings.Add(BankFindings.NoReturn(key, back.Returns == BankReturns.End ? "end" : "start", "no bank is", null));
            return;
        }

        foreach (bool atEnd in (bool[])[false, true])
        {
            if (BankReturn.IsAsked(back.Returns, atEnd) && !BankReturn.CanTurn(spec, atEnd))
            {
                bool hasRamp = (atEnd ? spec.EndRamp : spec.StartRamp) is not null;
                bool hasOther = back.Returns == BankReturns.Both && BankReturn.CanTurn(spec, !atEnd);
                findings.Add(BankFindings.NoReturn(key, atEnd ? "end" : "start", hasRamp ? "a ramp comes down" : "the end is cut on the skew",
                    hasOther ? atEnd ? "start" : "end" : null));
            }
        }
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

        if (facing.Piers is { On: PierWalls.Back or PierWalls.Both })
        {
            findings.Add(BankFindings.NoWall($"{spec.Key}.facing.piers.on", "piers", Cure.Text($"{spec.Key}.facing.piers.on", "front")));
        }

        findings.AddRange(OpeningsBehind(spec).Select(key => BankFindings.NoWall(key, "openings", Cure.Text(key, "front"))));
    }

    // Keys that put openings in the back.
    private static IEnumerable<string> OpeningsBehind(PlatformSpec spec) => (spec.Facing?.Openings ?? []).Index()
        .Where(o => o.Item.IsBack).Select(o => PlatformFindings.Indexed(spec.Key + ".facing", "opening", o.Index) + ".on");
}
