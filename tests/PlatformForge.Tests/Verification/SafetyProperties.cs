using FsCheck.Xunit;
using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Exports.Stl;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections;
using PlatformForge.Sections.Forms;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Track;
using PlatformForge.Track.Charts;
using PlatformForge.Units;
using PlatformForge.Verification;
using PlatformForge.Verification.Written;
using Xunit;

namespace PlatformForge.Tests.Verification;

/// <summary>The promise of the whole program, held against what would be written: no section fouls what the platform was made for.</summary>
public class SafetyProperties
{
    // Edges are on the safe side by the envelope's error and the facets' versine; a budget kept by more than this was not asked for.
    private const double Generous = 0.1;
    private const double RampGradient = 8;

    private static readonly ClearanceBudget PendlewickBudget = ClearanceBudget.Of(running: 1, print: 0.15, fitting: 0.15, laying: 0.2, play: new(0.2, 0.05));

    // Made once: a platform of 730 mm through all rooms is most of the time these tests take.
    private static readonly Lazy<WrittenSection[]> PendlewickSections =
        new(() => Written(Pendlewick.Platform(), Pendlewick.Run, Pendlewick.Track, PendlewickBudget));

    [Fact]
    public void Pendlewick_keeps_its_budget_and_wastes_little_of_it()
    {
        var verdict = SectionsVerifier.Verify(PendlewickSections.Value, Facts(Pendlewick.Platform(), Pendlewick.Run, Pendlewick.Track, PendlewickBudget));
        Assert.Empty(verdict.Findings);
        Assert.InRange(verdict.Tightest!.Clearance, 0, Generous);
        Assert.Equal(1.5, PendlewickBudget.Margin, 1e-9);
        Assert.True(verdict.Closest!.Clearance > PendlewickBudget.Margin);
        Assert.Equal(Pendlewick.Vehicles.Count, verdict.Vehicles.Count(v => v.Tightest!.Clearance >= 0));
    }

    [Fact]
    public void A_coach_longer_than_any_planned_for_is_refused_at_Pendlewick()
    {
        var longer = Pendlewick.LongCoach with
        {
            Name = "sleeping car",
            PivotCentres = 210,
            Parts = [VehiclePart.Box("body", PartCarrier.Body, -165, 165, 36, 13, 50)]
        };
        var run = Pendlewick.Run with { Vehicles = [Pendlewick.LongCoach, longer] };
        var verdict = SectionsVerifier.Verify(PendlewickSections.Value, Facts(Pendlewick.Platform(), run, Pendlewick.Track, PendlewickBudget));
        var finding = Assert.Single(verdict.Findings);
        Assert.Equal(FaultKind.DesignRule, finding.Kind);
        Assert.Contains("sleeping car", finding.Message, StringComparison.Ordinal);
    }

    [Property(MaxTest = 5)]
    public void No_section_fouls_whatever_the_line_the_fleet_and_the_budget(int seed)
    {
        var random = new Random(seed);
        var track = RandomTrack(random);
        var chart = KinkRounder.Chart(track).Line;
        var side = random.Next(2) == 0 ? Side.Left : Side.Right;
        var play = random.Next(2) == 0 ? RunningPlay.None : new RunningPlay(Of(random, 0, 0.4), Of(random, 0, 0.2), Of(random, 0, 0.02),
            5)
        { Cant = Of(random, 0, 0.02) };
        var budget = ClearanceBudget.Of(Of(random, 0, 1.5), print: Of(random, 0, 0.3), fitting: Of(random, 0, 0.3), play: play);
        double from = Of(random, 330, 420), to = from + Of(random, 110, 180), height;
        var spec = new PlatformSpec("up side", new FaceSpec("up", side, from, to, (EdgeStyle)random.Next(3)))
        {
            Height = height = Of(random, 6, 14),
            StartRamp = random.Next(2) == 0 && height * RampGradient < to - from ? new(Gradient: RampGradient) : null,
        };
        var fleet = Enumerable.Range(0, 1 + random.Next(3)).Select(i => RandomVehicle(random, i)).ToArray();
        var run = new TrackRun(track, fleet);
        var verdict = SectionsVerifier.Verify(Written(spec, run, chart, budget), Facts(spec, run, chart, budget));
        Assert.Empty(verdict.Findings);
        Assert.True(verdict.Tightest!.Clearance >= 0, $"{verdict.Tightest}");
        Assert.All(verdict.Vehicles, v => Assert.True(v.Closest!.Clearance >= budget.Margin));
    }

    /// <summary>Cylinders at one end only, on the inside of a curve, with play: their rear corner swings out and back, and was swept as if it swung
    /// forward.</summary>
    [Fact]
    public void Cylinders_that_swing_out_on_the_inside_of_a_curve_keep_the_budget() =>
        No_section_fouls_whatever_the_line_the_fleet_and_the_budget(86);

    /// <summary>Short platforms that were cut at the ramp's head, so near to their end that the bosses round the bores reached past it.</summary>
    [Theory]
    [InlineData(1123)]
    [InlineData(1129)]
    [InlineData(1345)]
    public void A_joint_does_not_reach_past_the_end_of_a_short_platform(int seed) =>
        No_section_fouls_whatever_the_line_the_fleet_and_the_budget(seed);

    /// <summary>
    /// Before buffers a vehicle halts with its end at the end of the track. Its cylinders then stand a distance beyond the platform's end, which was made for a
    /// vehicle without them.
    /// </summary>
    [Theory]
    [InlineData(0.5, 1.4)]
    [InlineData(1.3, 1.4)]
    [InlineData(1.5, 1.4)]
    [InlineData(3.0, 2.9)]
    public void What_halts_beyond_a_platforms_end_is_as_far_from_it_as_it_is(double beyond, double asked)
    {
        var track = TrackLayer.Lay(new("bay", new(0, 0), 0, [new StraightSpec(700)])).Value!;
        var spec = new PlatformSpec("bay side", new FaceSpec("bay", Side.Left, 25, 116.5));
        var plain = new Vehicle("engine", 112, 0, 0, [VehiclePart.Box("body", PartCarrier.Body, -80, 80, 34, 3, 40)]) { EitherWayRound = false };
        var budget = ClearanceBudget.Of(running: asked);
        var sections = Written(spec, new TrackRun(track, [plain]) { StartsAtBuffers = true }, track, budget);
        var engine = plain with { Parts = [.. plain.Parts, VehiclePart.Box("cylinders", PartCarrier.Body, 36.5 + beyond, 46.5, 44, 2, 11)] };
        var verdict = SectionsVerifier.Verify(sections, Facts(spec, new TrackRun(track, [engine]) { StartsAtBuffers = true }, track, budget));
        Assert.Equal(beyond >= asked, verdict.Passed);
        Assert.Equal(Math.Min(beyond, asked), verdict.Closest!.Clearance, 0.005);
    }

    // Through every room to the bytes of the STL files, and back.
    private static WrittenSection[] Written(PlatformSpec spec, TrackRun run, Centreline chart, ClearanceBudget budget)
    {
        var envelope = Made(EnvelopeSweeper.Sweep(new(chart, spec.Face.From, spec.Face.To, [run]) { Beyond = HeldHeights.Beyond(budget), Play = budget.Play }));
        var plan = Made(PlatformPlanner.Plan(new(spec, Pendlewick.Site, chart, envelope, budget) { StartsAtBuffers = run.StartsAtBuffers }));
        var sections = Made(SectionMaker.Make(plan, PrinterSpec.Oblong(300, 300, 300), new())).Sections;
        return [.. sections.Select(s => new WrittenSection(spec.Name, s.Name, s.Name,
            Made(StlReader.Read(StlWriter.ToBytes(s.PrintMesh(), s.Name), s.Name)).Mesh, s.ToLayout))];
    }

    private static DesignFacts Facts(PlatformSpec spec, TrackRun run, Centreline chart, ClearanceBudget budget) => new()
    {
        RailTop = Pendlewick.RailTop,
        Runs = [run],
        Play = budget.Play,
        Asked = budget.Margin,
        HeldDownTo = -Pendlewick.RailTop,
        Stretches = [new(spec.Name, chart, spec.Face.Side, spec.Face.From, spec.Face.To)],
    };

    private static T Made<T>(Outcome<T> outcome)
        where T : class
    {
        Assert.True(outcome.Succeeded, string.Join('\n', outcome.Findings.Select(f => f.Message)));
        return outcome.Value!;
    }

    // Straight, transition, curve, reverse transition and curve, in either hand; sometimes sectional track with a kink at a joint.
    private static Centreline RandomTrack(Random random)
    {
        double hand = random.Next(2) == 0 ? 1 : -1, one = hand / Of(random, 500, 1800), other = -hand / Of(random, 500, 1800);
        var elements = new List<CentrelineElement> { new(default, Of(random, -3, 3), 260, 0, 0) };
        void Add(double length, double from, double to, double kink = 0)
        {
            var last = elements[^1];
            elements.Add(new(last.At(last.Length).Position, last.HeadingAt(last.Length) + kink, length, from, to));
        }

        Add(Of(random, 80, 200), 0, one);
        Add(Of(random, 60, 200), one, one, random.Next(2) == 0 ? 0 : Of(random, -0.006, 0.006));
        Add(Of(random, 100, 200), one, other);
        Add(600, other, other);
        return new("up", elements);
    }

    private static Vehicle RandomVehicle(Random random, int index)
    {
        double length = Of(random, 80, 250), pivots = length * Of(random, 0.5, 0.72), width = Of(random, 30, 36),
            wheelbase = random.Next(2) == 0 ? 0 : Of(random, 15, 36);
        var parts = new List<VehiclePart> { VehiclePart.Box("body", PartCarrier.Body, -length / 2, length / 2, width, Of(random, 2, 14), 50) };
        if (wheelbase > 0)
        {
            parts.Add(VehiclePart.Box("side frames", PartCarrier.LeadingBogie, -wheelbase, wheelbase, width - 2, 1, 8));
        }

        if (random.Next(2) == 0)
        {
            parts.Add(VehiclePart.Box("cylinders", PartCarrier.Body, pivots / 2, (pivots / 2) + 12, width + Of(random, 0, 3), 2, 10));
        }

        return new($"vehicle {index}", pivots, wheelbase, wheelbase, parts);
    }

    private static double Of(Random random, double low, double high) => low + (random.NextDouble() * (high - low));
}
