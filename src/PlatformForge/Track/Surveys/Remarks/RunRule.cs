using PlatformForge.Geometry;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys.Remarks;

/// <summary>What readings in order along a track have to obey before anything can be fitted to them.</summary>
internal static class RunRule
{
    /// <summary>Fewest places a curve can be told by, with some left over to check them against.</summary>
    public const int FewestPlaces = 5;

    /// <summary>Least length of track in mm, and in ruler errors, that a line can be found from.</summary>
    public const double ShortestSurvey = 20, ShortestInErrors = 40;

    // A step back of less than this many ruler errors may be scatter of close readings.
    private const double ScatterInErrors = 6;

    // A line whose ends lie nearer to one another than this part of its length comes back to its beginning.
    private const double ClosedPart = 0.02;

    // A line that turns by more than this, a full circle and a little for scatter, runs beside itself.
    private const double MostTurn = 2.2 * Math.PI;

    // Points looked at for a crossing; denser runs are thinned, since the scatter of close readings crosses itself.
    private const int MostForCrossing = 1500;

    /// <summary>Tells too few places, places given twice, steps back along the track and a line that crosses itself.</summary>
    public static void Check(string key, double error, IReadOnlyList<PlaceReading> run, string file, List<Finding> findings)
    {
        if (run.Count < FewestPlaces)
        {
            findings.Add(TooFew(key, run) with { File = file, Line = run.Count == 0 ? 1 : LineOf(run[^1]) });
            return;
        }

        double covered = Covered(run), least = Math.Max(ShortestSurvey, ShortestInErrors * error);
        if (!(covered >= least))
        {
            findings.Add(TooShort(key, error, covered, least) with { File = file, Line = LineOf(run[0]) });
            return;
        }

        int faults = findings.Count;
        CheckOrder(key, ScatterInErrors * error, run, findings);
        if (findings.Count == faults)
        {
            CheckCourse(key, error, run, covered, findings);
        }
    }

    private static Finding TooFew(string key, IReadOnlyList<PlaceReading> run)
    {
        string count = run.Count == 0 ? "There are no readings" : run.Count == 1 ? "There is 1 reading" : Invariant($"There are {run.Count} readings");
        return Finding.Error("PF2105", key, Invariant($"{count}; a curve needs at least {FewestPlaces}."),
            Invariant($"Measure {FewestPlaces} places or more at even distances along the platform and the length of the longest vehicle beyond both ends."));
    }

    private static Finding TooShort(string key, double error, double covered, double least) => Finding.Error(
        "PF2130", key, Invariant($"The readings cover {Told(covered)} mm of track with a ruler error of {error:0.##} mm."),
        Invariant($"Measure {least:0} mm of track at least; check the unit of the figures."));

    private static double Covered(IReadOnlyList<PlaceReading> run)
    {
        double covered = 0;
        for (int i = 1; i < run.Count; i++)
        {
            covered += (run[i].Place - run[i - 1].Place).Length;
        }

        return covered;
    }

    // Places follow one another along the track, each given once. Directions are compared over steps longer than scatter.
    private static void CheckOrder(string key, double scatter, IReadOnlyList<PlaceReading> run, List<Finding> findings)
    {
        int faults = findings.Count, kept = 0;
        var turn = new Turning();
        for (int i = 1; i < run.Count && findings.Count - faults < Tables.SurveyTable.FaultsTold; i++)
        {
            if (run[i].Place - run[i - 1].Place == default)
            {
                findings.Add(Twice(key, run, i));
                continue;
            }

            var stride = run[i].Place - run[kept].Place;
            if (stride.Length < scatter)
            {
                continue;
            }

            int next = Following(run, i, scatter);
            if (next < run.Count && Point2.Dot(stride, run[next].Place - run[i].Place) < 0)
            {
                AddOnce(BackAlong(key, run, i, next), findings);
                i = next;
            }

            if (next < run.Count)
            {
                turn.Add(stride, run[next].Place - run[i].Place);
                if (turn.Most > MostTurn && findings.Count == faults)
                {
                    findings.Add(Round(key, run[next]));
                }
            }

            kept = i;
        }
    }

    // The first reading after one that lies farther from it than scatter; the count of readings where none does.
    private static int Following(IReadOnlyList<PlaceReading> run, int i, double scatter)
    {
        int next = i + 1;
        while (next < run.Count && (run[next].Place - run[i].Place).Length < scatter)
        {
            next++;
        }

        return next;
    }

    private static void AddOnce(Finding fault, List<Finding> findings)
    {
        if (!findings.Contains(fault))
        {
            findings.Add(fault);
        }
    }

    private static Finding Twice(string key, IReadOnlyList<PlaceReading> run, int i) =>
        At(run[i], Finding.Error("PF2107", key, $"The place of {run[i - 1].Whereabouts} is given a second time.", "Keep one of the two."));

    private static Finding BackAlong(string key, IReadOnlyList<PlaceReading> run, int i, int next) => run[i].Ordinate is null
        ? At(run[next],
            Finding.Error("PF2106", key, $"The track turns back on itself after {run[i].Whereabouts}: {Next(run[next])} is out of order.",
                "List the points in order along the track."))
        : StickingOut.Near(key, run, i);

    private static Finding Round(string key, PlaceReading reading) => At(reading, Finding.Error(
        "PF2146", key, $"The line turns by more than a full circle up to {reading.Whereabouts}.",
        $"{OwnLine(reading)} leave out what lies beyond the first turn."));

    // A figure that a reader takes in, however small.
    private static string Told(double length) => length < 0.01 ? "less than 0.01" : Invariant($"{length:0.##}");

    private static void CheckCourse(string key, double error, IReadOnlyList<PlaceReading> run, double covered, List<Finding> findings)
    {
        if (Closed(key, error, run, covered) is { } closed)
        {
            findings.Add(closed);
            return;
        }

        CheckCrossing(key, ScatterInErrors * error, run, findings);
    }

    private static Finding? Closed(string key, double error, IReadOnlyList<PlaceReading> run, double covered)
    {
        double apart = (run[^1].Place - run[0].Place).Length, open = Math.Max(ScatterInErrors * error, ClosedPart * covered);
        return apart >= open ? null : At(run[^1],
            Finding.Error("PF2146", key, Invariant($"The line of {covered:0} mm is closed: its end is its beginning ({apart:0.##} mm apart)."),
                Invariant($"{OwnLine(run[^1])} cut it open where no platform is: leave out {open:0.#} mm or more.")));
    }

    /// <summary>How far a line turns from its first direction, and the most between any two.</summary>
    private struct Turning
    {
        private double heading, least, most;

        public readonly double Most => most - least;

        public void Add(Point2 before, Point2 after)
        {
            heading += Math.Atan2(Point2.Cross(before, after), Point2.Dot(before, after));
            (least, most) = (Math.Min(least, heading), Math.Max(most, heading));
        }
    }

    private static void CheckCrossing(string key, double scatter, IReadOnlyList<PlaceReading> run, List<Finding> findings)
    {
        double least = Math.Max(scatter, Covered(run) / MostForCrossing);
        var thin = new List<PlaceReading> { run[0] };
        foreach (var reading in run)
        {
            if ((reading.Place - thin[^1].Place).Length >= least)
            {
                thin.Add(reading);
            }
        }

        for (int i = 1; i < thin.Count; i++)
        {
            for (int j = i + 2; j < thin.Count; j++)
            {
                if (Cross(thin[i - 1].Place, thin[i].Place, thin[j - 1].Place, thin[j].Place))
                {
                    findings.Add(At(thin[j], Finding.Error(
                        "PF2108",
                        key,
                        $"The line crosses itself: {thin[i - 1].Whereabouts} to {thin[i].Whereabouts} and {thin[j - 1].Whereabouts} to {thin[j].Whereabouts}.",
                        "Give each track a survey of its own, and each stretch once.")));
                    return;
                }
            }
        }
    }

    /// <summary>Whether two pieces of line cross, ends not counted.</summary>
    internal static bool Cross(Point2 a, Point2 b, Point2 c, Point2 d)
    {
        double c1 = Point2.Cross(b - a, c - a), d1 = Point2.Cross(b - a, d - a), a1 = Point2.Cross(d - c, a - c), b1 = Point2.Cross(d - c, b - c);
        return c1 * d1 < 0 && a1 * b1 < 0;
    }

    internal static Finding At(Reading reading, Finding finding) => finding with { File = reading.File, Line = LineOf(reading) };

    private static int LineOf(Reading reading) => reading.DrawnAt ?? reading.Row;

    private static string OwnLine(Reading reading) =>
        reading.DrawnAt is null ? "Survey one stretch of the track by itself, or" : "Name the track's own line by element, or";

    private static string Next(Reading reading) => reading.DrawnAt is null ? "the point" : reading.Whereabouts;
}
