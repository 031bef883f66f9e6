using System.Globalization;
using System.Text.RegularExpressions;
using FsCheck.Xunit;
using PlatformForge.Clearance;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Sections;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Platforms;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Sections;

/// <summary>Decks with crossfall on curves, made of planes that meet at the joints.</summary>
public class FlatDeckTests
{
    [Property(MaxTest = 10)]
    public void Planes_meet_at_every_joint_and_keep_height_and_fall_or_say_so(int seed)
    {
        var random = new Random(seed);
        var plan = Bench.Plan(Bench.Request(seed, (EdgeStyle)random.Next(3), s => s with
        {
            Deck = s.Deck with { Crossfall = 30 + (random.NextDouble() * 70) },
            StartRamp = random.Next(2) == 0 ? null : new(Gradient: 8),
            EndRamp = random.Next(2) == 0 ? null : new(Length: 100),
        }));
        var outcome = SectionMaker.Make(plan, Workbench.Printer, new() { Engrave = false });
        var (built, cuts) = (outcome.Value!.Plan, outcome.Value.Cuts);
        foreach (double cut in cuts.Append(plan.Profile.StartHead).Append(plan.Profile.EndHead).Where(c => c > built.Stations[0] && c < built.Stations[^1]))
        {
            HeightPlane before = built.Surface.At(cut - 1e-6), after = built.Surface.At(cut + 1e-6);
            Assert.All(new[] { 0, 20, 60.0 }, t => Assert.Equal(before.At(plan.ToLayout(cut, t)), after.At(plan.ToLayout(cut, t)), 1e-9));
        }

        // What planes cannot do is told, and nothing else is.
        var fit = DeckFit.Of(built);
        Assert.Equal(fit.CopingOff > 0.15 || fit.FallOff > 0.02, outcome.Findings.Any(f => f.Code == "PF6020"));
        Assert.Equal(built.Spec.Deck.Width / built.Spec.Deck.Crossfall, fit.FallAsked, 1e-12);
    }

    // In this design a wall's levels merge until two corners of it are left: it has no face, and its neighbours close over it.
    [Fact]
    public void A_wall_that_merged_levels_fold_up_leaves_no_hole() => Planes_meet_at_every_joint_and_keep_height_and_fall_or_say_so(27);

    [Theory]
    [InlineData(1500, 40, true)]
    [InlineData(260, 80, true)]
    [InlineData(260, 40, false)]
    [InlineData(200, 30, false)]
    public void On_a_tight_curve_shorter_sections_and_less_fall_are_offered_and_work(double radius, double fall, bool keeps)
    {
        PlatformPlan With(double n) => OnCircle(radius, n);
        var first = SectionMaker.Make(With(fall), Workbench.Printer, new());
        Assert.Equal(keeps, first.Findings.All(f => f.Code != "PF6020"));
        if (keeps)
        {
            return;
        }

        var finding = first.Findings.Single(f => f.Code == "PF6020");
        Assert.Equal(Severity.Warning, finding.Severity);
        double Figure(string key) =>
            double.Parse(Regex.Match(finding.Remedy, Regex.Escape(key) + @" = (?<n>[\d.]+)", RegexOptions.ExplicitCapture).Groups["n"].Value,
                CultureInfo.InvariantCulture);
        var shorter = SectionMaker.Make(With(fall), Workbench.Printer, new() { LongestSection = Figure("sections.longest") });
        Assert.DoesNotContain(shorter.Findings, f => f.Code is "PF6020");
        Assert.Contains(FormattableString.Invariant($"({shorter.Value!.Sections.Count} sections instead ")
            + FormattableString.Invariant($"of {first.Value!.Sections.Count};"), finding.Remedy, StringComparison.Ordinal);
        Assert.DoesNotContain(SectionMaker.Make(With(Figure("deck.crossfall")), Workbench.Printer, new()).Findings, f => f.Code == "PF6020");
    }

    [Fact]
    public void Where_bodies_may_pass_over_the_coping_it_never_stands_above_its_height()
    {
        var request = Bench.Request(3, EdgeStyle.Uniform,
            s => s with { Height = 11.5, Deck = s.Deck with { Crossfall = 40 }, Face = s.Face with { BodiesPassOver = true } });
        var steps = VehiclePart.Box("steps", PartCarrier.Body, -40, 40, 34, 3, 8);
        request = request with
        {
            Envelope = Bench.Envelope(request.Chart, request.Spec.Face.Side, _ => 18,
            new KeyValuePair<VehiclePart, Func<double, double>>(steps, _ => 17))
        };
        var built = SectionMaker.Make(Bench.Plan(request), Workbench.Printer, new()).Value!.Plan;
        var off = built.Stations.Select(s => built.TopAt(s, built.CopingFront.At(s)) - built.Profile.At(s)).ToArray();
        Assert.Equal(0, off.Max(), 1e-9);
        Assert.InRange(off.Min(), -0.3, -1e-4);
    }

    [Fact]
    public void On_a_circle_the_planes_fold_evenly_about_the_coping_s_height()
    {
        // Chords of equal length under equal planes: the coping bulges over its chord by the versine over the fall, half of it to either side of its height.
        var set = Workbench.Made(OnCircle(700, 60), Workbench.Printer, new());
        var fit = DeckFit.Of(set.Plan);
        Assert.Equal(fit.CopingHigh, -fit.CopingLow, 0.1 * fit.CopingOff);
        double front = 700 + set.Plan.CopingFront.Reach[0], longest = set.Sections.Max(s => s.Length) * front / 700;
        Assert.Equal(longest * longest / (8 * front) / 60 / 2, fit.CopingOff, 0.15 * fit.CopingOff);
    }

    private static PlatformPlan OnCircle(double radius, double fall)
    {
        var track = TrackLayer.Lay(new("up", new(0, 0), 0, [new CurveSpec(radius, Hand.Left, Length: Math.Min(1000, radius * 4))])).Value!;
        var spec = new PlatformSpec("curved", new FaceSpec("up", Side.Right, 110, track.Length - 110, EdgeStyle.Uniform))
        {
            Deck =
            new() { Width = 40, Crossfall = fall }
        };
        return Bench.Plan(new(spec, Pendlewick.Site, track, Bench.Envelope(track, Side.Right, _ => 18), ClearanceBudget.Of(running: 1)));
    }
}
