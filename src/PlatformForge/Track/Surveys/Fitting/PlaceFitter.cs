using PlatformForge.Geometry;
using PlatformForge.Track.Surveys.Fitting.Lines;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Units;

namespace PlatformForge.Track.Surveys.Fitting;

/// <summary>
/// Fits places: a first line through them, a search among shapes by their offsets from it, the same again from the line so
/// found, and last the exact fit of the shapes that remain in question.
/// </summary>
internal static class PlaceFitter
{
    /// <summary>More readings than this are taken together by neighbours for the search.</summary>
    public const int MostSingle = 240;

    // More readings than this are taken together for the first search, which tries far more shapes than the later ones: into so many groups,
    // of so many readings at least, for one misread figure among them is told by the two others.
    private const int FewEnough = 90, Searched = 64, LeastGroup = 3;

    /// <summary>Neighbours share some errors of ruler and string: the mean of many is not trusted below this part of one reading's error.</summary>
    public const double LeastMeanError = 0.25;

    // A reading this many standard deviations from the middle one of its neighbours has no part in their mean.
    private const double FarFromMiddle = 6;

    // Lines are not told apart by less than this, mm: paper and screens draw no finer.
    private const double FinestSigma = 0.03;

    // How often the search is repeated for readings that are better than stated.
    private const int MostRefinements = 3;

    /// <summary>The fits in question, the one to state first.</summary>
    public static FittedShapes Fit(string name, IReadOnlyList<IReadOnlyList<PlaceReading>> runs, double sigma)
    {
        var first = ReferenceLine.Through(runs.MaxBy(r => r.Count)!, sigma);
        var (located, found) = Search(name, runs, first, sigma);
        (located, found, double fine) = Refined(name, runs, located, found, sigma);
        var shapes = found;
        found = SmoothSearch.Unless(found, located.Observations, located.Length, placed: true);

        double spacing = located.Length / (located.Observations.Count - 1);
        bool sparse = spacing > StationSpacing.Telling(sigma * Math.Sqrt(3), StationSpacing.Sharpest(found[0].Profile, spacing));
        var (likely, doubted) = sparse ? PutBack.From(found, located.Observations) : (found, []);
        var without = doubted.Length > 0 ? found[0] : null;
        if (without is null && located.Single)
        {
            (without, doubted) = EndDoubt.Of(likely[0], located.Observations);
        }

        var kept = sparse ? FitChoice.Distinct(NearShapes.Among(likely, located.Observations), NearShapes.Most) : FitChoice.Distinct(likely);
        var targets = located.TargetsAt(sigma);
        ExactFit Exact(ProfileFit f)
        {
            var (start, heading) = located.Start(f.Profile);
            return ExactFit.Polish(name, f.Profile.Moved(0, f.Profile.Length), start, heading, targets, f.LeftOut);
        }

        int[] Readings(IEnumerable<int> observations) => located.Single ? [.. observations.Select(i => located.Observations[i].Reading)] : [];
        IReadOnlyList<OtherLine> Others() => !located.Single ? [] :
            [.. OtherShapes.Beside(shapes, located.Observations, located.Length).Select(f => new OtherLine(
                Exact(f).Line, Readings(Enumerable.Range(0, f.LeftOut.Length).Where(i => f.LeftOut[i] && !kept[0].LeftOut[i]))))];

        return FittedShapes.Of(
            kept,
            Exact,
            Readings(Enumerable.Range(0, located.Observations.Count).Where(i => kept[0].LeftOut[i])),
            Readings(doubted),
            without is null ? null : Exact(without)) with
        { Others = Others, Worth = Worth([shapes[0], found[0]], located.Single ? fine : sigma) };
    }

    // Readings much better than stated, as those off a drawing are, tell finer shapes. How far the line may be off is told by
    // the stated error nevertheless.
    private static (Located Located, IReadOnlyList<ProfileFit> Found, double Sigma) Refined(
        string name, IReadOnlyList<IReadOnlyList<PlaceReading>> runs, Located located, IReadOnlyList<ProfileFit> found, double sigma)
    {
        double fine = sigma;
        for (int round = 0; round < MostRefinements && located.Single && found[0].ScatterIfLess is { } scatter && fine > FinestSigma; round++)
        {
            fine = Math.Max(FinestSigma, fine * scatter);
            var (again, finer) = Improve(name, runs, located, found[0], fine);
            if (finer[0].LeftOut.Count(x => x) > found[0].LeftOut.Count(x => x) || finer[0].IsScattered)
            {
                break;
            }

            (located, found) = (again, finer);
        }

        return (located, found, fine);
    }

    // A figure costs what it does where the ruler's error is the usual one, mm: what is known of track beforehand does not hang on the ruler.
    private const double UsualSigma = 0.25 / 1.7320508;

    private static double Worth(IEnumerable<ProfileFit> fits, double sigma) =>
        fits.Min(f => f.Cost + (2 * Math.Max(0, f.LeftOut.Count(x => !x) - f.Profile.Freedom) * Math.Log(sigma / UsualSigma)));

    private static (Located Located, IReadOnlyList<ProfileFit> Found) Search(string name, IReadOnlyList<IReadOnlyList<PlaceReading>> runs,
        Centreline reference, double sigma)
    {
        int readings = runs.Sum(r => r.Count), groups = readings > FewEnough ? Math.Min(Searched, readings / LeastGroup) : MostSingle;
        var located = Located.On(reference, runs, sigma, groups);

        // The mean of readings on a bend lies inside of it, by more than the mean of many may be off: they are taken anew about a line through the means,
        // which bends as they do.
        if (!located.Single && located.Middles is { } middles)
        {
            located = Located.On(ReferenceLine.Through(middles), runs, sigma, groups);
        }

        var search = new ProfileSearch(located.Observations, located.Length, placed: true);
        var found = search.Run(located.Single ? Suspects.Among(located.Observations) : []);

        // The first line runs through misread places too; what was found on it is put right on the line it gave.
        double before = located.Length;
        (located, found) = Improve(name, runs, located, found[0], sigma);

        // A reference that runs through a grossly misread place is longer than the track, by the way there and back.
        for (int round = 0; round < MostRefinements && found[0].LeftOut.Contains(true) && Math.Abs(located.Length - before) > sigma; round++)
        {
            before = located.Length;
            (located, found) = Improve(name, runs, located, found[0], sigma);
        }

        return (located, found);
    }

    private static (Located Located, IReadOnlyList<ProfileFit> Found) Improve(string name, IReadOnlyList<IReadOnlyList<PlaceReading>> runs, Located before,
        ProfileFit found, double sigma)
    {
        var (from, direction) = before.Start(found.Profile);
        var located = Located.On(ProfileLine.Build(name, found.Profile, from, direction), runs, sigma);
        var search = new ProfileSearch(located.Observations, located.Length, placed: true);
        return (located, search.Improve(found.Profile.Moved(located.Origin, located.Length),
            before.Single && located.Single ? located.Carry(before.Spread(found.LeftOut)) : new bool[located.Observations.Count]));
    }

    /// <summary>Readings told by chainage and offset of a reference.</summary>
    private sealed class Located
    {
        private readonly Centreline reference;
        private readonly Func<double, double> twice;

        private Located(Centreline reference) => (this.reference, twice) = (reference, ReferenceLine.TwiceIntegrated(reference));

        /// <summary>Chainage of the reference at which the readings begin.</summary>
        public double Origin { get; private set; }

        public double Length { get; private set; }

        public bool Single { get; private set; }

        public List<Observation> Observations { get; } = [];

        private List<FitTarget> Targets { get; } = [];

        /// <summary>The places of what was taken together, in order; null where they are no line.</summary>
        public IReadOnlyList<Point2>? Middles
        {
            get
            {
                Point2[] places = [.. Targets.Cast<PlaceTarget>().Select(t => t.Place)];
                return places.Length > 2 && places.Zip(places.Skip(1), (a, b) => (b - a).Length)
                    .All(apart => apart > Tolerances.Rounding && double.IsFinite(apart)) ? places : null;
            }
        }

        /// <summary>What the exact fit has to meet; single readings with a standard deviation of their own.</summary>
        public List<FitTarget> TargetsAt(double sigma) => Single ? [.. Targets.Select(t => t with { Sigma = sigma })] : Targets;

        public static Located On(Centreline reference, IReadOnlyList<IReadOnlyList<PlaceReading>> runs, double sigma, int mostSingle = MostSingle)
        {
            var places = new List<(double S, double Y, int Reading, PlaceReading Source)>();
            foreach (var run in runs)
            {
                double guess = reference.Locate(run[0].Place).Chainage;
                for (int i = 0; i < run.Count; i++)
                {
                    guess += i == 0 ? 0 : Point2.Dot(run[i].Place - run[i - 1].Place, reference.At(guess).Tangent);
                    var place = reference.Locate(run[i].Place, guess);
                    places.Add((place.Chainage, place.Offset - run[i].FromCentre, places.Count, run[i]));
                    guess = place.Chainage;
                }
            }

            places = [.. places.OrderBy(p => p.S).ThenBy(p => p.Reading)];
            var located = new Located(reference) { Origin = places[0].S, Length = places[^1].S - places[0].S, Single = places.Count <= mostSingle };
            if (located.Single)
            {
                foreach (var (s, y, reading, source) in places)
                {
                    located.Add(s, y, sigma, reading, new PlaceTarget(source.Place, source.FromCentre, s - located.Origin, sigma));
                }
            }
            else
            {
                located.AddMeans(places, sigma, mostSingle);
            }

            return located;
        }

        /// <summary>Where a profile told from this reference starts.</summary>
        public (Point2 Place, double Heading) Start(CurvatureProfile profile)
        {
            var frame = reference.At(Origin);
            return (frame.At(profile.Offset - twice(Origin)), reference.Elements[0].Heading + profile.Heading);
        }

        /// <summary>From which observations are left out to which readings are.</summary>
        public bool[] Spread(bool[] leftOut)
        {
            bool[] readings = new bool[Observations.Max(o => o.Reading) + 1];
            for (int i = 0; i < leftOut.Length; i++)
            {
                readings[Observations[i].Reading] |= leftOut[i];
            }

            return readings;
        }

        /// <summary>The reverse of <see cref="Spread"/>.</summary>
        public bool[] Carry(bool[] readings) => [.. Observations.Select(o => readings[o.Reading])];

        private void Add(double s, double y, double sigma, int reading, FitTarget target)
        {
            Observations.Add(new([s - Origin], [1], y + twice(s), sigma, reading));
            Targets.Add(target);
        }

        private void AddMeans(List<(double S, double Y, int Reading, PlaceReading Source)> all, double sigma, int groups)
        {
            // A place that the line has no chainage for has no part in a mean.
            var places = all.Where(p => double.IsFinite(p.S) && double.IsFinite(p.Y)).ToList();
            groups = Math.Min(groups, places.Count);
            for (int g = 0; g < groups; g++)
            {
                int from = (int)((long)places.Count * g / groups), to = (int)((long)places.Count * (g + 1) / groups);
                var group = places[from..to];
                double middle = group.Select(p => p.Y).Order().ElementAt(group.Count / 2);
                var near = group.Where(p => Math.Abs(p.Y - middle) <= FarFromMiddle * sigma).ToList();
                double s = near.Average(p => p.S), y = near.Average(p => p.Y), error = sigma * Math.Max(LeastMeanError, 1 / Math.Sqrt(near.Count));
                Add(s, y, error, near[0].Reading, new PlaceTarget(reference.PointAt(s, y), 0, s - Origin, error));
            }
        }
    }
}
