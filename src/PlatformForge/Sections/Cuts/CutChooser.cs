using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Beds;
using PlatformForge.Sections.Forms;
using PlatformForge.Sections.Joints;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Units;

namespace PlatformForge.Sections.Cuts;

/// <summary>
/// Chooses cuts among the plan's candidates: as few sections as the bed allows, their lengths as even as can be. A section that takes
/// in part of a ramp and part of the level deck prints worse and counts as two, so that a cut at a ramp's head wins unless it costs two.
/// A section too short for what its joints bring is taken only where nothing else is left, for the joint's rule to tell.
/// </summary>
internal sealed class CutChooser
{
    private readonly FacetedPlan chart;
    private readonly PrinterSpec printer;
    private readonly SectionSpec spec;
    private readonly BedShape bed;
    private readonly SectionOutline outline;
    private readonly double[] places;
    private readonly bool[] forced;
    private readonly bool[] baseboard;

    public CutChooser(FacetedPlan chart, PrinterSpec printer, SectionSpec spec)
    {
        (this.chart, this.printer, this.spec) = (chart, printer, spec);
        bed = new(printer);
        outline = new(chart, spec.Pose);
        var cuts = chart.Plan.CutCandidates.Where(c => c.IsStated || IsClear(c.Chainage)).ToArray();
        baseboard = [false, .. cuts.Select(c => c.Rank == CutRank.Baseboard), false];
        places = [chart.Stations[0], .. cuts.Select(c => c.Chainage), chart.Stations[^1]];
        forced = [true, .. cuts.Select(c => c.IsStated), true];
    }

    /// <summary>Ends of the sections by rising chainage: the platform's start, the cuts, its end.</summary>
    public Outcome<double[]> Choose()
    {
        int n = places.Length;
        var cost = new (int TooShort, int Sections, double Squares)[n];
        var next = new int[n];
        int farthest = n - 1;
        for (int i = n - 2; i >= 0; i--)
        {
            cost[i] = (int.MaxValue, 0, 0);
            farthest = Farthest(i, farthest);
            for (int j = farthest; j > i; j--)
            {
                if (cost[j].TooShort == int.MaxValue)
                {
                    continue;
                }

                double length = places[j] - places[i];
                bool mixed = spec.Pose != PrintPose.Upright && outline.Shape(places[i], places[j]) == SectionShape.Mixed;
                bool tooShort = !JointRoom.IsEnough(JointRoom.Between(chart, places[i], places[j]), Depth(i) + Depth(j));
                var total = (cost[j].TooShort + (tooShort ? 1 : 0), cost[j].Sections + (mixed ? 2 : 1), cost[j].Squares + (length * length));
                if (total.CompareTo(cost[i]) < 0)
                {
                    (cost[i], next[i]) = (total, j);
                }
            }
        }

        if (cost[0].TooShort == int.MaxValue)
        {
            return Outcome.Fault<double[]>(Faults());
        }

        var ends = new List<double> { places[0] };
        for (int i = 0; i < n - 1; i = next[i])
        {
            ends.Add(places[next[i]]);
        }

        return Outcome.Of(ends.ToArray());
    }

    /// <summary>Fewest sections when only the bed counts: each as long as it can be. Zero when even that fails.</summary>
    public int Fewest()
    {
        int count = 0;
        for (int i = 0; i < places.Length - 1; count++)
        {
            int j = Farthest(i, i + 1);
            if (j == i)
            {
                return 0;
            }

            i = j;
        }

        return count;
    }

    // A shorter section fits wherever a longer one does, so the farthest end is found by halving; it lies near that of a neighbouring place.
    private int Farthest(int i, int near)
    {
        int good = i, bad = i + 1;
        while (bad < places.Length && !forced[bad])
        {
            bad++;
        }

        bad = Math.Min(bad, places.Length - 1) + 1;
        int at = Math.Clamp(near, i + 1, bad - 1);
        bool ahead = Fits(i, at);
        (good, bad) = ahead ? (at, bad) : (good, at);
        for (int step = 1; bad - good > 1;)
        {
            // Strides grow until one passes the end, then halve.
            int middle = (good + bad) / 2;
            at = Math.Clamp(ahead ? Math.Min(good + step, middle) : Math.Max(bad - step, middle), good + 1, bad - 1);
            bool fits = Fits(i, at);
            (good, bad, step) = (fits ? at : good, fits ? bad : at, fits == ahead ? 2 * step : step);
        }

        return good;
    }

    private bool Fits(int i, int j) =>
        places[j] - places[i] <= (spec.LongestSection ?? double.PositiveInfinity) && outline.Fits(places[i], places[j], bed, printer.Height);

    // The platform's own ends have no joint, and no dowel crosses a joint in the baseboard.
    private double Depth(int i) => i == 0 || i == places.Length - 1 ? 0 : JointRoom.Depth(spec.Joint, printer, !baseboard[i]);

    private bool IsClear(double cut)
    {
        var plan = chart.Plan;
        double joint = JointRoom.Depth(spec.Joint, printer, dowels: true);
        return !plan.Keepouts.Any(k => k.Holds(KeptOff.Cuts) && Clear(k) is var clear && cut > k.From - clear && cut < k.To + clear);

        // What joints keep off is left out of the end wall and the bosses that a joint brings, too.
        double Clear(Keepout k) => Math.Max(k.Holds(KeptOff.Joints) ? joint : 0, spec.CutClearance - k.CutInto);
    }

    // The piece that is worst in each way is told, with how many are too large: they have one cause, and what mends the worst mends all.
    private List<Finding> Faults()
    {
        var findings = new List<Finding>();
        var pieces = Enumerable.Range(0, places.Length - 1).Where(i => !Fits(i, i + 1)).Select(i => Measured(places[i], places[i + 1])).ToArray();
        var tallest = pieces.MaxBy(p => p.Tall);
        if (tallest.Tall > printer.Height)
        {
            findings.Add(SectionFindings.PieceTooTall(printer.Key, tallest.From, tallest.To, tallest.Tall, printer.Height));
        }

        var worst = pieces.MinBy(p => p.Room);
        if (worst.Room < 0)
        {
            double lean = outline.Lean(worst.Tall);
            var size = (Length: worst.Hull.Max(p => p.X) - worst.Hull.Min(p => p.X), Width: worst.Hull.Max(p => p.Y) - worst.Hull.Min(p => p.Y));
            findings.Add(SectionFindings.PieceTooLarge(
                printer,
                (worst.From, worst.To),
                (pieces.Count(p => p.Room < 0), places.Length - 1),
                size,
                -2 * worst.Room,
                Largest(worst.To - worst.From, length => outline.Fits(worst.From, worst.From + length, bed, double.PositiveInfinity)),
                Largest(size.Width, width => bed.Fits([new(0, 0), new(size.Length, 0), new(size.Length, width), new(0, width)], lean))));
        }

        var longest = pieces.MaxBy(p => p.To - p.From);
        if (longest.To - longest.From > spec.LongestSection)
        {
            findings.Add(SectionFindings.LongestTooShort(spec.Key, longest.From, longest.To, spec.LongestSection.Value));
        }

        return findings;
    }

    private (double From, double To, Point2[] Hull, double Tall, double Room) Measured(double from, double to)
    {
        var (hull, tall) = outline.Printed(from, to);
        double lean = outline.Lean(tall);
        return (from, to, hull, tall, bed.Best(hull, enough: lean).Room - lean);
    }

    // Greatest size below one that is too large, to a hundredth of a millimetre; 0 when not even a sliver fits.
    private static double Largest(double tooLarge, Func<double, bool> fits)
    {
        const double resolution = 0.01;
        double good = 0, bad = tooLarge;
        while (bad - good > resolution)
        {
            double middle = (good + bad) / 2;
            (good, bad) = fits(middle) ? (middle, bad) : (good, middle);
        }

        return good;
    }
}
