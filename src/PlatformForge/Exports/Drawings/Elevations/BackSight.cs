using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;
using PlatformForge.Track;

namespace PlatformForge.Exports.Drawings.Elevations;

/// <summary>A back without a wall as it is seen from behind, developed along the deck's back edge: a bank, or the hollow of one that is open against
/// a backscene.</summary>
internal sealed class BackSight
{
    private readonly double[] stations, along;
    private readonly bool rising;
    private readonly IReadOnlyList<PlatformSection> sections;

    public BackSight(SectionSet set)
    {
        Plan = set.Plan;
        Bank = Plan.Bank;
        rising = Plan.Side != Side.Left;
        sections = rising ? [.. set.Sections] : [.. set.Sections.Reverse()];
        var (trim, wall) = (set.Joint.EndTrim, set.Joint.EndWall);
        JointWalls = [.. sections.Where(s => s.Number > 1).Select(s => (s.From + trim, s.From + trim + wall)),
            .. sections.Where(s => s.Number < s.Count).Select(s => (s.To - trim - wall, s.To - trim))];
        stations = Plan.Back.Stations;
        along = new double[stations.Length];
        for (int i = 1; i < stations.Length; i++)
        {
            along[i] = along[i - 1] + (Plan.ToLayout(stations[i], Plan.Back.Reach[i]) - Plan.ToLayout(stations[i - 1], Plan.Back.Reach[i - 1])).Length;
        }
    }

    /// <summary>The platform.</summary>
    public PlatformPlan Plan { get; }

    /// <summary>The bank, if it is one.</summary>
    public PlanBank? Bank { get; }

    /// <summary>Chainages between which the end walls of sections' joints stand, mm.</summary>
    public IEnumerable<(double From, double To)> JointWalls { get; }

    /// <summary>Length of the deck's back edge, mm.</summary>
    public double Length => along[^1];

    /// <summary>Where a chainage is from the left end, mm.</summary>
    public double Place(double chainage) => FromLeft(Between(stations, along, chainage));

    /// <summary>The chainage there.</summary>
    public double Chainage(double place) => Between(along, stations, FromLeft(place));

    /// <summary>The return of a bank round the end at the left, or at the right; null where it has none.</summary>
    public BankReturn? Turn(bool atLeft) => (Bank?.Returns ?? []).FirstOrDefault(r => r.IsAtEnd != (rising == atLeft));

    /// <summary>Whether all of a section lies between two places.</summary>
    public bool IsWhole(int section, double from, double to) => sections.First(s => s.Number == section) is var whole
        && Math.Abs(Math.Abs(Place(whole.To) - Place(whole.From)) - (to - from)) < Units.Tolerances.GridStep;

    /// <summary>Height of the deck's back edge over the baseboard there, mm.</summary>
    public double Top(double place) => Chainage(place) is var s ? Plan.TopAt(s, Plan.Back.At(s)) : 0;

    /// <summary>Places between two at which the edge or its height may bend, the two among them.</summary>
    public double[] Bends(double from, double to) =>
        [.. along.Select(FromLeft).Concat(Plan.Surface.Breaks.Select(Place)).Where(x => x > from && x < to).Append(from).Append(to).Distinct().Order()];

    /// <summary>It in rows.</summary>
    /// <param name="room">Longest row, mm of the model.</param>
    /// <param name="scale">Sheet mm to a mm of the model.</param>
    /// <param name="standing">What stands on the deck, the farthest first.</param>
    public IReadOnlyList<IElevationRow> Rows(double room, double scale, IReadOnlyList<StandingMark> standing)
    {
        var rows = new List<List<(int Section, double From, double To, bool Begins)>>();
        double left = 0;
        foreach (var section in sections)
        {
            double a = Place(section.From), b = Place(section.To), from = Math.Min(a, b), to = Math.Max(a, b);
            for (bool begins = true; from < to; begins = false)
            {
                if (rows.Count == 0 || left < to - from)
                {
                    (left, rows) = (room, [.. rows, new()]);
                }

                double taken = Math.Min(to - from, left);
                rows[^1].Add((section.Number, from, from + taken, begins));
                (left, from) = (left - taken, from + taken);
            }
        }

        return [.. rows.Select(r => new BackRow(this, r, scale, standing))];
    }

    private double FromLeft(double x) => rising ? x : Length - x;

    // Straight between places, on as at the ends.
    private static double Between(double[] from, double[] to, double at)
    {
        int next = Math.Clamp(Array.FindIndex(from, f => f >= at) is var i && i < 0 ? from.Length - 1 : i, 1, from.Length - 1);
        return to[next - 1] + ((to[next] - to[next - 1]) * (at - from[next - 1]) / (from[next] - from[next - 1]));
    }
}
