using System.Globalization;
using System.Text.RegularExpressions;
using FsCheck.Xunit;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Platforms;

public class PassingOverTests
{
    // Bodies 20 mm out from 16 mm above rail, cylinders 17 mm out down to 3.
    private static PlatformRequest Request(bool over, Func<PlatformSpec, PlatformSpec>? change = null)
    {
        var body = VehiclePart.Box("body", PartCarrier.Body, -50, 50, 40, 16, 50);
        var cylinders = VehiclePart.Box("cylinders", PartCarrier.Body, 20, 40, 34, 3, 10);
        var request =
            Bench.Straight(s => (change ?? (x => x))(s with { Height = 12, Deck = s.Deck with { Width = 60 }, Face = s.Face with { BodiesPassOver = over } }));
        return request with { Envelope = Bench.Envelope(request.Chart, Side.Left, _ => double.NegativeInfinity, new(body, _ => 20), new(cylinders, _ => 17)) };
    }

    [Fact]
    public void By_default_the_coping_is_held_to_every_part_at_all_heights()
    {
        var plan = Bench.Plan(Request(false));
        Assert.Equal(21, plan.CopingFront.At(500), 1e-3);
        Assert.All(plan.Requirement.GoverningPart, p => Assert.Equal("body", p));
        Assert.All(plan.Requirement.GoverningVehicle, v => Assert.Equal("body", plan.Requirement.Vehicles[v]));
    }

    [Fact]
    public void Where_bodies_may_pass_over_the_coping_is_held_to_what_is_low()
    {
        var plan = Bench.Plan(Request(true));
        Assert.Equal(18, plan.CopingFront.At(500), 1e-3);
        Assert.All(plan.Requirement.GoverningPart, p => Assert.Equal("cylinders", p));
    }

    [Theory]
    [InlineData(3.9, "cylinders")]
    [InlineData(4.1, "body")]
    public void The_vertical_gap_decides_what_passes_over(double gap, string governing)
    {
        // The body's underside is 16 above rail, the coping's top 12. A roof passes over all the same.
        var request = Request(true, s => s with { Face = s.Face with { VerticalGap = gap } });
        var roof = new PartReach(0, Bench.Fleet, VehiclePart.Box("roof", PartCarrier.Body, -50, 50, 40, 40, 50), request.Envelope.Parts[1].Left,
            request.Envelope.Parts[1].Right);
        var outcome = PlatformPlanner.Plan(request with { Envelope = request.Envelope with { Parts = [.. request.Envelope.Parts, roof] } });
        Assert.All(outcome.Value!.Requirement.GoverningPart, p => Assert.Equal(governing, p));
        Assert.Equal(governing == "body", outcome.Findings.Any(f => f.Code == "PF4206" && f.Remedy.Contains("of 4 mm or less", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_vertical_gap_that_nothing_can_keep_is_an_error_with_the_largest_that_works()
    {
        PlatformRequest With(double gap, double height = 12) => Request(true, s => s with { Height = height, Face = s.Face with { VerticalGap = gap } });
        var finding = Assert.Single(PlatformPlanner.Plan(With(5)).Findings, f => f.Severity == Severity.Error);
        Assert.Equal(("PF4026", "platform[0].face.vertical_gap"), (finding.Code, finding.Key));
        Assert.Contains("Give a vertical gap of 4 mm or less.", finding.Remedy, StringComparison.Ordinal);
        Assert.DoesNotContain(PlatformPlanner.Plan(With(4)).Findings, f => f.Severity == Severity.Error);

        // A coping higher than every underside is another matter: no gap helps, and holding to all of them is safe.
        Assert.Equal("PF4205", Assert.Single(PlatformPlanner.Plan(With(1, 17)).Findings, f => f.Severity == Severity.Warning).Code);
    }

    [Fact]
    public void A_ramp_is_held_to_parts_at_its_falling_height()
    {
        // With a gap of 4.1 the body counts where the coping is higher than 11.9 above rail: on the level and the top of the ramp only. On the
        // ramp 1 in 10 this is its first millimetre; from 9 mm below the head on the cylinders count alone.
        var plan = Bench.Plan(Request(true, s => s with { Face = s.Face with { VerticalGap = 4.1 }, EndRamp = new(Gradient: 10) }));
        Assert.Equal(21, plan.CopingFront.At(plan.Profile.EndHead), 1e-3);
        Assert.Equal(18, plan.CopingFront.At(plan.Profile.EndHead + 20), 1e-3);

        // Lower than 3 + gap below the cylinders nothing counts; the ramp's foot at rail top with a gap of 2 is such a place.
        var foot = PlatformPlanner.Plan(Request(true, s => s with { Face = s.Face with { VerticalGap = 2 }, EndRamp = new(Gradient: 10) }));
        var high = Assert.Single(foot.Findings, f => f.Severity == Severity.Error);
        Assert.Equal(("PF4028", "platform[0].face.vertical_gap"), (high.Code, high.Key));
        Assert.Contains("3.01 mm or more", high.Remedy, StringComparison.Ordinal);
        Assert.True(PlatformPlanner.Plan(Request(true, s => s with { Face = s.Face with { VerticalGap = 3.01 }, EndRamp = new(Gradient: 10) })).Succeeded);
    }

    [Fact]
    public void What_stands_on_the_deck_is_held_to_the_full_height_all_the_same()
    {
        // The coping's front may be at 18 and its back at 20, but a post needs 21.
        PlatformSpec Low(PlatformSpec s) => (s with { Coping = s.Coping with { Width = 2, Overhang = 0 } }).With<SocketSpec>([new(500, 2.9, InsetFrom.Edge)]);
        var finding = Assert.Single(PlatformPlanner.Plan(Request(true, Low)).Findings, f => f.Severity == Severity.Error);
        Assert.Equal(("PF4023", "platform[0].board[0]"), (finding.Code, finding.Key));
    }

    /// <summary>A coping 1.2 thick with its top at 12 and a gap of 0.5 is met from 10.3 above rail top; what stays lower can only meet the wall, an overhang of
    /// 1 mm behind it.</summary>
    [Theory]
    [InlineData(10.2, 20.4, 21, null)] // the body, 20 out, governs the coping; the wall stands at 22
    [InlineData(10.4, 20.4, 21.4, null)]
    [InlineData(10.2, 23, 23, "2.00 mm farther")] // the wall at 24
    [InlineData(10.4, 23, 24, null)]
    public void What_stays_under_the_coping_meets_the_wall_only(double top, double low, double coping, string? told)
    {
        PlatformRequest With(double overhang)
        {
            var request = Request(false, s => s with { Face = s.Face with { VerticalGap = 0.5 }, Coping = s.Coping with { Overhang = overhang } });
            var body = request.Envelope.Parts[1];
            var gear = VehiclePart.Box("gear", PartCarrier.Body, -20, 20, 40, 3, top);
            return request with { Envelope = request.Envelope with { Parts = [body, new(0, Bench.Fleet, gear, [.. body.Left.Select(_ => low)], body.Right)] } };
        }

        var outcome = PlatformPlanner.Plan(With(1));
        Assert.Equal(coping, outcome.Value!.CopingFront.At(500), 1e-3);
        var note = outcome.Findings.SingleOrDefault(f => f.Code == "PF4090");
        Assert.Equal(told is null, note is null);
        if (note is not null)
        {
            // The overhang that is offered leaves the body to govern, and nothing is told any more.
            Assert.Contains(told!, note.Message, StringComparison.Ordinal);
            Assert.Contains("overhang of 3 mm", note.Remedy, StringComparison.Ordinal);
            var offered = PlatformPlanner.Plan(With(3));
            Assert.Equal(21, offered.Value!.CopingFront.At(500), 1e-3);
            Assert.DoesNotContain(offered.Findings, f => f.Code == "PF4090");
        }
    }

    [Fact]
    public void Where_nothing_reaches_the_copings_height_the_wall_governs_and_no_distance_is_told()
    {
        var note = Assert.Single(PlatformPlanner.Plan(Request(true, s => s with { Face = s.Face with { VerticalGap = 0.5 } })).Findings,
            f => f.Code == "PF4090");
        Assert.EndsWith("nothing reaches the coping's own height.", note.Message, StringComparison.Ordinal);
        Assert.Equal("", note.Remedy);
    }

    [Property(MaxTest = 15)]
    public void Letting_bodies_pass_over_never_moves_a_fitted_edge_away(int seed)
    {
        var low = VehiclePart.Box("cylinders", PartCarrier.Body, 20, 40, 34, 3, 10);
        var random = new Random(seed);
        var reach = Bench.Reach(random);
        PlatformPlan Plan(bool over)
        {
            var request = Bench.Request(seed, EdgeStyle.Fitted,
                s => s with { Face = s.Face with { BodiesPassOver = over, VerticalGap = 0.5 }, StartRamp = new(Gradient: 8) { FootHeight = 4 } });
            return Bench.Plan(request with
            {
                Envelope = Bench.Envelope(request.Chart, request.Spec.Face.Side, s => reach(s) + 1,
                new KeyValuePair<VehiclePart, Func<double, double>>(low, s => reach(s + 40)))
            });
        }

        // Where bodies begin to count, at the ramp's head, what is required jumps, and one facet over the jump is held to both of its sides: there the edge may
        // stand a tenth farther off. Left out is that facet's length and no more.
        const double Facet = 5;
        var (all, over) = (Plan(false), Plan(true));
        for (double s = all.Stations[0]; s < all.Stations[^1]; s += 2)
        {
            if (Math.Abs(s - over.Profile.StartHead) < Facet)
            {
                continue;
            }

            Assert.True(over.CopingFront.At(s) <= all.CopingFront.At(s) + (3 * Tolerances.FacetVersine),
                $"{seed}: {over.CopingFront.At(s) - all.CopingFront.At(s)} at {s}");
        }
    }

    [Fact]
    public void Vehicles_of_a_track_behind_limit_the_platforms_width()
    {
        // A second track's vehicles sweep from 70 to 110 mm on the platform's side.
        var request = Bench.Straight(s => s with { Deck = s.Deck with { Width = 55 } });
        var first = request.Envelope.Parts[0];
        int count = request.Envelope.Count;
        PartReach Other(double near, double far) => new(1, Bench.Fleet, Bench.Fleet.Parts[0], [.. Enumerable.Repeat(far, count)],
            [.. Enumerable.Repeat(-near, count)]);
        var outcome = PlatformPlanner.Plan(request with { Envelope = request.Envelope with { Parts = [first, Other(70, 110)] } });
        var finding = Assert.Single(outcome.Findings, f => f.Severity == Severity.Error);
        Assert.Equal(("PF4022", "platform[0].deck.width"), (finding.Code, finding.Key));

        // Edge at 19, one millimetre kept at the back: 50 wide at most, less a facet's rounding.
        Assert.Contains("49.99", finding.Remedy, StringComparison.Ordinal);
        Assert.True(PlatformPlanner.Plan((request with { Envelope = request.Envelope with { Parts = [first, Other(75.1, 110)] } })).Succeeded);

        // A track that comes in on the near side governs the coping instead.
        var near = Bench.Plan(request with { Envelope = request.Envelope with { Parts = [first, Other(-15, 22)] } });
        Assert.Equal(23, near.CopingFront.At(500), 1e-3);
    }

    /// <summary>
    /// On a ramp whose foot something lower comes past, a part 8 mm over the rails counts a third of the way up, at 4 mm, from a foot of 3.02 mm on:
    /// with the stated gap of 2 the ramp has to be 6.01 mm high there.
    /// </summary>
    [Fact]
    public void The_foot_that_is_offered_lifts_the_ramp_where_it_is_too_low()
    {
        PlatformRequest With(double foot)
        {
            var request = Bench.Straight(s => s with
            {
                Height = 12,
                Deck = s.Deck with { Width = 60 },
                Face = s.Face with { BodiesPassOver = true, VerticalGap = 2 },
                EndRamp = new(Length: 120, FootHeight: foot),
            });
            var frames = VehiclePart.Box("frames", PartCarrier.Body, -40, 40, 34, 8, 12);
            var steps = VehiclePart.Box("steps", PartCarrier.Body, -50, 50, 34, 1, 2);
            var nothing = double.NegativeInfinity;
            return request with
            {
                Envelope = Bench.Envelope(request.Chart, Side.Left, _ => nothing, new(frames, _ => 17),
                new(steps, s => s > 760 ? 17 : nothing))
            };
        }

        var finding = Assert.Single(PlatformPlanner.Plan(With(0)).Findings, f => f.Severity == Severity.Error);
        Assert.Equal("PF4028", finding.Code);
        double offered = double.Parse(Regex.Match(finding.Remedy, @"foot \([a-z.]+\) to ([0-9.]+) mm").Groups[1].Value, CultureInfo.InvariantCulture);
        Assert.InRange(offered, 3.015, 3.03);
        Assert.True(PlatformPlanner.Plan(With(offered)).Succeeded);
    }
}
