using PlatformForge.Units;

namespace PlatformForge.Platforms.Furniture;

/// <summary>
/// Places along a line that divide it as evenly as what blocks allows: the fewest for which no two neighbours are farther apart than the pitch, then
/// the least greatest distance, then, between what they are pressed against, all distances equal.
/// </summary>
/// <remarks>
/// The free stretch that each place stands in is found with the least greatest distance. Then the most even row is a string pulled taut through gates one
/// step apart, which minimises every convex measure of the distances at once. All figures are mm along the line.
/// </remarks>
internal static class EvenRow
{
    // Halvings of a distance: of a metre, these leave a thousandth of a thousandth of a millimetre.
    private const int Halvings = 40;

    // Sums of lengths that differ by less than this, mm, are equal.
    private const double Grain = Tolerances.Rounding;

    /// <summary>The places in order; where nothing is free within a pitch, the next free place beyond, so that a distance is greater than the pitch.</summary>
    /// <param name="from">Start of the line, which carries as a place does.</param>
    /// <param name="to">Its end.</param>
    /// <param name="pitch">Greatest distance wanted.</param>
    /// <param name="free">Closed stretches where a place may be, in order, apart from one another, within the line.</param>
    public static double[] Divide(double from, double to, double pitch, IReadOnlyList<(double Low, double High)> free)
    {
        var places = new List<double>();
        double start = from;
        int first = 0;
        for (int i = 0; i <= free.Count; i++)
        {
            // What is wider than the pitch parts the line in two: each side has its last place right beside it.
            double low = i == 0 ? from : free[i - 1].High, high = i == free.Count ? to : free[i].Low;
            if (high - low <= pitch + Grain && i < free.Count)
            {
                continue;
            }

            bool wide = high - low > pitch + Grain;
            double end = wide ? low : to;
            places.AddRange(Row(start, end, pitch, [.. free.Skip(first).Take(i - first)]));
            if (wide && low > from)
            {
                places.Add(low);
            }

            if (wide && high < to)
            {
                places.Add(high);
            }

            (start, first) = (high, i);
        }

        return [.. places.Distinct()];
    }

    // A row over a line on which nothing blocked is wider than the pitch.
    private static double[] Row(double from, double to, double pitch, (double Low, double High)[] free)
    {
        if (to - from <= pitch + Grain || free.Length == 0)
        {
            return [];
        }

        var gates = Fewest(from, to, pitch, free, int.MaxValue)!;
        double good = pitch, bad = (to - from) / (gates.Count + 1) * (1 - Grain);
        for (int i = 0; i < Halvings && good - bad > Grain; i++)
        {
            double middle = (good + bad) / 2;
            (good, bad, gates) = Fewest(from, to, middle, free, gates.Count) is { } found ? (middle, bad, found) : (good, middle, gates);
        }

        var places = new double[gates.Count + 2];
        (places[0], places[^1]) = (from, to);
        Tighten(places, gates, 0, places.Length - 1);
        return places[1..^1];
    }

    // The free stretches of the fewest places that keep a distance, each place as far on as it may be; null where it can't be kept with so many.
    private static List<(double Low, double High)>? Fewest(double from, double to, double distance, (double Low, double High)[] free, int most)
    {
        var gates = new List<(double, double)>();
        int next = 0;
        for (double at = from; to - at > distance + Grain;)
        {
            double limit = at + distance + Grain;
            while (next + 1 < free.Length && free[next + 1].Low <= limit)
            {
                next++;
            }

            double place = Math.Min(free[next].High, limit);
            if (place <= at + Grain || free[next].Low > limit || gates.Count == most)
            {
                return null;
            }

            gates.Add(free[next]);
            at = place;
        }

        return gates;
    }

    // Between two fixed places: all on one straight line over their numbers, or the one farthest out of its gate stands at that gate's side.
    private static void Tighten(double[] places, List<(double Low, double High)> gates, int a, int b)
    {
        int worst = -1;
        double most = 0, side = 0;
        for (int i = a + 1; i < b; i++)
        {
            double straight = places[a] + ((places[b] - places[a]) * (i - a) / (b - a)), held = Math.Clamp(straight, gates[i - 1].Low, gates[i - 1].High);
            (worst, most, side) = Math.Abs(straight - held) > most ? (i, Math.Abs(straight - held), held) : (worst, most, side);
            places[i] = straight;
        }

        if (worst >= 0)
        {
            places[worst] = side;
            Tighten(places, gates, a, worst);
            Tighten(places, gates, worst, b);
        }
    }
}
