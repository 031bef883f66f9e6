namespace PlatformForge.Track.Charts;

/// <summary>
/// Front door of the folder: rounds the kinks of a centreline so that every place beside the track has one chainage and one
/// offset. At a kink the square offsets on the outside leave a wedge without any, and on the inside overlap.
/// </summary>
public static class KinkRounder
{
    /// <summary>How far either side of a kink the rounding reaches, mm, where it need not be longer or shorter.</summary>
    public const double UsualReach = 10;

    /// <summary>Radius in mm below which a rounding is not drawn if the track leaves room for a longer one: plan coordinates on
    /// the inside of a fillet end at its radius.</summary>
    public const double LeastRadius = 300;

    // Samples across each half of a fillet; the bound adds what can hide between two of them.
    private const int Samples = 16;

    /// <summary>
    /// The chart of a ride line. Each fillet reaches <see cref="UsualReach"/> to either side, farther for a turn that would
    /// otherwise be sharper than <see cref="LeastRadius"/>, and never past halfway to the next kink or past an end.
    /// </summary>
    public static TrackChart Chart(Centreline ride)
    {
        if (ride.Kinks.Count == 0)
        {
            return new(ride, ride, []);
        }

        var elements = new List<CentrelineElement>();
        var fillets = new Fillet[ride.Kinks.Count];
        double done = 0, chart = 0;
        for (int i = 0; i < fillets.Length; i++)
        {
            var kink = ride.Kinks[i];
            double reach = Math.Min(
                Math.Max(UsualReach, Math.Abs(kink.Turn) * LeastRadius / 2),
                Math.Min(RoomBefore(ride, i), RoomAfter(ride, i)));
            var (from, to) = (kink.Chainage - reach, kink.Chainage + reach);
            chart += Copy(ride, done, from, elements);
            var (first, second) = Biarc.Between(ride.At(from), ride.At(to), HeadingAt(ride, from));
            elements.Add(first);
            elements.Add(second);
            double end = chart + first.Length + second.Length;
            double sharpest = Math.Max(Math.Abs(first.StartCurvature), Math.Abs(second.StartCurvature));
            fillets[i] = new(kink, from, to, chart, end, 1 / sharpest, Bound(ride, kink.Chainage, reach, first, second));
            (done, chart) = (to, end);
        }

        Copy(ride, done, ride.Length, elements);
        return new(ride, new Centreline(ride.Name, elements), fillets);
    }

    private static double RoomBefore(Centreline ride, int kink) =>
        kink == 0 ? ride.Kinks[0].Chainage : (ride.Kinks[kink].Chainage - ride.Kinks[kink - 1].Chainage) / 2;

    private static double RoomAfter(Centreline ride, int kink) =>
        kink == ride.Kinks.Count - 1 ? ride.Length - ride.Kinks[kink].Chainage : (ride.Kinks[kink + 1].Chainage - ride.Kinks[kink].Chainage) / 2;

    private static double HeadingAt(Centreline ride, double chainage)
    {
        int i = ride.ElementAt(chainage);
        return ride.Elements[i].HeadingAt(chainage - ride.StartOf(i));
    }

    /// <summary>Copies a stretch of the ride line, element by element, and tells its length.</summary>
    private static double Copy(Centreline ride, double from, double to, List<CentrelineElement> elements)
    {
        for (int i = ride.ElementAt(from); i < ride.Elements.Count && ride.StartOf(i) < to; i++)
        {
            var whole = ride.Elements[i];
            double start = Math.Max(from - ride.StartOf(i), 0), end = Math.Min(to - ride.StartOf(i), whole.Length);
            if (end - start <= Units.Tolerances.CentrelinePosition)
            {
                continue;
            }

            elements.Add(start == 0 && end == whole.Length
                ? whole
                : new(whole.At(start).Position, whole.HeadingAt(start), end - start, whole.CurvatureAt(start), whole.CurvatureAt(end)));
        }

        return Math.Max(0, to - from);
    }

    /// <summary>
    /// Bound on the distance between ride line and fillet: the greatest of samples of the ride line, with the kink itself among
    /// them, plus h²/8 times the difference of curvatures for a spacing h, the most a smooth offset can rise between two samples.
    /// </summary>
    private static double Bound(Centreline ride, double kink, double reach, CentrelineElement first, CentrelineElement second)
    {
        var fillet = new Centreline(ride.Name, [first, second]);
        double greatest = 0, bend = Math.Max(Math.Abs(first.StartCurvature), Math.Abs(second.StartCurvature));
        for (int i = -Samples; i <= Samples; i++)
        {
            double s = kink + (reach * i / Samples), guess = fillet.Length * (i + Samples) / (2 * Samples);
            bend = Math.Max(bend, Math.Abs(ride.At(s).Curvature));
            greatest = Math.Max(greatest, Math.Abs(fillet.Locate(ride.At(s).Position, guess).Offset));
        }

        double spacing = reach / Samples;
        return greatest + (spacing * spacing / 4 * bend);
    }
}
