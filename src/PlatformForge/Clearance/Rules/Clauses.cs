using static System.FormattableString;

namespace PlatformForge.Clearance.Rules;

/// <summary>The few shapes that published platform figures take. Full-size figures in mm; findings in model mm.</summary>
internal static class Clauses
{
    // A model edge that misses a figure by less than this, mm, is not told: nobody can lay or print it closer.
    private const double Unseen = 0.05;

    // Equal gradients reach here by different sums.
    private const double Rounding = 1.000001;

    /// <summary>Deck between two heights above rail top.</summary>
    public static RuleClause Height(string clause, string source, double low, double high) => new("PF3050", clause, source, s =>
    {
        double least = s.Scale.ToModel(low), most = s.Scale.ToModel(high);
        return s.Height < least - Unseen ? new("height", Invariant($"The deck is {s.Height:F2} mm above rail top, below the published {least:F2} mm"),
            Invariant($"Raise it to {least:F2} mm or more."))
            : s.Height > most + Unseen ? new("height", Invariant($"The deck is {s.Height:F2} mm above rail top, above the published {most:F2} mm"),
                Invariant($"Lower it to {most:F2} mm or less."))
            : null;
    });

    /// <summary>Deck at one of several heights, each with what it may be under and over.</summary>
    public static RuleClause HeightAmong(string clause, string source, double under, double over, params double[] heights) => new("PF3050", clause, source, s =>
    {
        double full = s.Scale.ToFullSize(s.Height), unseen = s.Scale.ToFullSize(Unseen);
        if (heights.Any(h => full >= h - under - unseen && full <= h + over + unseen))
        {
            return null;
        }

        double near = s.Scale.ToModel(heights.MinBy(h => Math.Abs(h - full)));
        return new("height", Invariant($"The deck is {s.Height:F2} mm above rail top, which is none of the published heights"),
            Invariant($"The nearest is {near:F2} mm."));
    });

    /// <summary>Least distance of the edge from the track's centreline.</summary>
    /// <param name="clause">Name of the figure.</param>
    /// <param name="source">Where it stands.</param>
    /// <param name="least">Least distance in model mm at a place; null where the source gives none.</param>
    public static RuleClause Edge(string clause, string source, Func<RuleSubject, EdgePlace, double?> least) => new("PF3051", clause, source, s =>
    {
        double worst = Unseen;
        Shortfall? amiss = null;
        foreach (var place in s.Edge)
        {
            if (least(s, place) is { } wanted && wanted - place.Distance > worst)
            {
                worst = wanted - place.Distance;
                amiss = new("face",
                    Invariant($"At chainage {place.Chainage:F0} mm the edge is {place.Distance:F2} mm from the track's centre, the published least ")
                        + Invariant($"is {wanted:F2} mm"),
                    Invariant($"Move it {worst:F2} mm away from the track, or keep what your own vehicles need and leave the rule out."));
            }
        }

        return amiss;
    });

    /// <summary>Least deck width, one figure for platforms with one face and one for islands.</summary>
    public static RuleClause Width(string clause, string source, double single, double island) => new("PF3052", clause, source, s =>
    {
        double least = s.Scale.ToModel(s.IsIsland ? island : single);
        return s.Width is { } width && width < least - Unseen
            ? new("deck.width", Invariant($"The deck is {width:F1} mm wide at its narrowest, the published least is {least:F1} mm"),
                Invariant($"Widen it by {least - width:F1} mm."))
            : null;
    });

    /// <summary>Steepest ramp, rise over run.</summary>
    public static RuleClause Ramp(string clause, string source, double steepest) => new("PF3053", clause, source, s =>
        s.RampGradient is { } gradient && gradient > steepest * Rounding
            ? new("ramps", Invariant($"The ramps fall 1 in {1 / gradient:F1}, steeper than the published 1 in {1 / steepest:F0}"),
                Invariant($"Make them {s.Height / steepest:F0} mm long."))
            : null);

    /// <summary>Fastest change of the edge's distance from the track, as n of 1 in n.</summary>
    public static RuleClause Taper(string clause, string source, double flattest) => new("PF3056", clause, source, s =>
    {
        (double Slope, double At) worst = (Rounding / flattest, 0);
        foreach (var (a, b) in s.Edge.Zip(s.Edge.Skip(1)))
        {
            double slope = Math.Abs(b.Distance - a.Distance) / (b.Chainage - a.Chainage);
            worst = slope > worst.Slope ? (slope, a.Chainage) : worst;
        }

        return worst.Slope > Rounding / flattest
            ? new("face.taper",
                Invariant($"At chainage {worst.At:F0} mm the edge changes its distance by 1 in {1 / worst.Slope:F1}, faster than the published 1 ")
                    + Invariant($"in {flattest:F0}"),
                Invariant($"Give edge = \"faired\" with a taper of {flattest:F0}."))
            : null;
    });

    /// <summary>Least clear width from the edge to anything that stands on the platform, full-size mm.</summary>
    public static RuleClause Clear(string clause, string source, double least) => new("PF3057", clause, source, s =>
    {
        double wanted = s.Scale.ToModel(least);
        return s.Standing.Count > 0 && s.Standing.MinBy(t => t.FromEdge) is var near && near.FromEdge < wanted - Unseen
            ? new("deck.width",
                Invariant($"The {near.Name} at chainage {near.Place.Chainage:F0} mm stands {near.FromEdge:F1} mm from the edge, the published least ")
                    + Invariant($"is {wanted:F1} mm"),
                Invariant($"Move it {wanted - near.FromEdge:F1} mm back."))
            : null;
    });

    /// <summary>Least distance of what stands on the platform from the track's centreline.</summary>
    /// <param name="clause">Name of the figure.</param>
    /// <param name="source">Where it stands.</param>
    /// <param name="least">Least distance in model mm beside a place; null where the source gives none.</param>
    public static RuleClause FromCentre(string clause, string source, Func<RuleSubject, EdgePlace, double?> least) => new("PF3058", clause, source, s =>
    {
        double worst = Unseen;
        Shortfall? amiss = null;
        foreach (var thing in s.Standing)
        {
            if (least(s, thing.Place) is { } wanted && wanted - thing.FromCentre > worst)
            {
                worst = wanted - thing.FromCentre;
                amiss = new("deck.width",
                    Invariant($"The {thing.Name} at chainage {thing.Place.Chainage:F0} mm stands {thing.FromCentre:F1} mm from the track's centre, the ")
                        + Invariant($"published least is {wanted:F1} mm"),
                    Invariant($"Move it {worst:F1} mm back."));
            }
        }

        return amiss;
    });

    /// <summary>Least overhang of the coping over its wall, full-size mm.</summary>
    public static RuleClause Overhang(string clause, string source, double least) => new("PF3060", clause, source, s =>
    {
        double wanted = s.Scale.ToModel(least);
        return s.Overhang is { } overhang && overhang < wanted - Unseen
            ? new("coping.overhang", Invariant($"The coping projects {overhang:F2} mm over the wall, the published least is {wanted:F2} mm"),
                Invariant($"Give an overhang of {wanted:F2} mm, with a coping wide enough to lie on the wall."))
            : null;
    });

    /// <summary>Steepest crossfall, rise over run.</summary>
    public static RuleClause Crossfall(string clause, string source, double steepest) => new("PF3054", clause, source, s =>
        s.Crossfall > steepest * Rounding
            ? new("deck.crossfall", Invariant($"The deck falls 1 in {1 / s.Crossfall:F0} across, steeper than the published 1 in {1 / steepest:F0}"),
                Invariant($"Give it 1 in {1 / steepest:F0} or flatter."))
            : null);
}
