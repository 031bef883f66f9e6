using FsCheck.Xunit;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Platforms;

public class AnyFigures
{
    private static readonly double[] Awkward =
    [
        0, -0.0, 1e-300, -1e-9, 0.2, 0.5, 0.8, 1, 1.2, 2, 3, 5, 7.9, 8, 10, 12, 20, 40, 60, 96, 150, 200, 299.5, 400, 500, 650, 800, 900, 1000, 5000, 1e6, -5,
        -200,
    ];

    [Theory]
    [InlineData(227647)] // a ramp of a sixteenth of a millimetre took the platform's end for its own
    public void Seeds_that_once_failed_do_so_no_more(int seed) => Whatever_figures_are_asked_for_there_is_a_plan_or_findings_with_remedies_and_no_crash(seed);

    [Property(MaxTest = 150, EndSize = 1000000)]
    public void Whatever_figures_are_asked_for_there_is_a_plan_or_findings_with_remedies_and_no_crash(int seed)
    {
        var random = new Random(seed);

        // A few figures out of the ordinary at a time, so that many specs get past the first rules.
        double Any(double usual) => random.Next(12) == 0 ? Awkward[random.Next(Awkward.Length)] : usual;
        var request = Bench.Request(seed, (EdgeStyle)random.Next(3), s => (s with
        {
            Height = Any(s.Height),
            Face = s.Face with
            {
                From = Any(s.Face.From),
                To = Any(s.Face.To),
                Taper = Any(40),
                LeastRadius = Any(600),
                BodiesPassOver = random.Next(2) == 0,
                VerticalGap = Any(1)
            },
            StartRamp = random.Next(2) == 0 ? null : new(Length: Any(96), FootHeight: Any(0)),
            EndRamp = random.Next(2) == 0 ? null : new(Gradient: Any(8), FootHeight: Any(0)),
            Deck = s.Deck with { Width = Any(48), Thickness = Any(1.5), Crossfall = Any(0) },
            Coping = s.Coping with
            {
                Width = Any(8),
                Thickness = Any(1.2),
                Overhang = Any(1),
                SlabLength = Any(12),
                JointDepth = Any(0.3),
                JointWidth = Any(0.4),
                ArrisChamfer = Any(0.3)
            },
            Walls = s.Walls with { FrontThickness = Any(1.6), BackThickness = Any(1.6), EndThickness = Any(1.6) },
            Ribs = s.Ribs with
            {
                Pitch = Any(30),
                Thickness = Any(1.2),
                LongitudinalCount = random.Next(4),
                LongitudinalThickness = Any(1.2),
                Depth = random.Next(2) == 0 ? null : Any(4)
            },
            WhiteLine = random.Next(2) == 0 ? null : new() { Inset = Any(0.8), Width = Any(1), GrooveDepth = Any(0) },
            ForcedCuts = random.Next(2) == 0 ? [] : [Any(350), Any(550)],
        }).With<SocketSpec>([new(Any(400), Any(8)) { Along = Any(2), Across = Any(1.2), Depth = Any(4) }, new(Any(500), Any(12), InsetFrom.Edge)])
        .With<FenceSpec>(random.Next(2) == 0 ? []
            : [new() { Pitch = Any(30), Inset = Any(2.5), PinDiameter = Any(1), From = Any(300), To = Any(700), Gaps = [new(Any(450), Any(480))] }]));
        var outcome = PlatformPlanner.Plan(request);
        Assert.Equal(outcome.Value is null, outcome.Findings.Any(f => f.Severity == Severity.Error));
        Assert.All(outcome.Findings.Where(f => f.Severity != Severity.Note), f => Assert.True(f.Key.Length > 0 && f.Remedy.Length > 0));
        Assert.All(outcome.Findings, f => Assert.DoesNotContain("NaN", f.Message + f.Remedy, StringComparison.Ordinal));
        if (outcome.Value is { } plan)
        {
            Assert.All(plan.Stations.Zip(plan.Stations.Skip(1)), p => Assert.True(p.First < p.Second));
            Assert.All(plan.CopingFront.Reach.Concat(plan.Back.Reach), t => Assert.True(double.IsFinite(t)));
            Assert.All(plan.Ribs, r => Assert.True(r.From < r.To && r.From >= plan.Stations[0] - 1e-9 && r.To <= plan.Stations[^1] + 1e-9));
            Assert.True(plan.CutCandidates.Zip(plan.CutCandidates.Skip(1)).All(c => c.First.Chainage < c.Second.Chainage));
        }
    }
}
