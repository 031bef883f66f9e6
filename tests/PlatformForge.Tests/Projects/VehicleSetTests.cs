using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Projects;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Projects;

/// <summary>Sets, tapers, plans of parts and the budget of play, from the words of a project file to what the rooms get.</summary>
public class VehicleSetTests
{
    private const string Triplet = """
        bogie_wheelbase = 34
        low = 10
        high = 50
        sill = { height = 13 }
        [[vehicle.body]]
        joined_by = "shared bogie"
        gap = 6
        gangway = { width = 18, low = 12, high = 42 }
        bogie_wheelbase = 30
        [[vehicle.body]]
        name = "brake end"
        joined_by = "shared bogie"
        gap = 8
        """;

    private static IReadOnlyList<Vehicle> Bodies(string more, params string[] sets) => Samples.Sound(Samples.With(12, "width = 34\n" + more), sets).Vehicles;

    [Fact]
    public void An_articulated_set_becomes_bodies_whose_shared_pivots_lie_midway_in_the_gaps()
    {
        var project = Samples.Sound(Samples.With(12, "width = 34\n" + Triplet));
        var bodies = project.Vehicles;
        Assert.Equal(["coach, body 1 of 3", "coach, body 2 of 3", "coach, brake end"], bodies.Select(b => b.Name));
        Assert.Equal([162, 228 + 3 + 4, 162], bodies.Select(b => b.PivotCentres));
        Assert.Equal([(34, 34), (34, 30), (30, 34)], bodies.Select(b => ((int)b.LeadingWheelbase, (int)b.TrailingWheelbase)));
        double Front(int i) => bodies[i].Parts[0].Outline.Max(p => p.X);
        double Rear(int i) => bodies[i].Parts[0].Outline.Min(p => p.X);
        Assert.Equal(3, Rear(0) + (bodies[0].PivotCentres / 2), 1e-9);
        Assert.Equal((-3.0, 4.0), (Math.Round(Front(1) - (bodies[1].PivotCentres / 2), 9), Math.Round(Rear(1) + (bodies[1].PivotCentres / 2), 9)));
        Assert.Equal(-4, Front(2) - (bodies[2].PivotCentres / 2), 1e-9);
        Assert.All(bodies, b => Assert.Equal(228, b.Parts[0].Outline.Max(p => p.X) - b.Parts[0].Outline.Min(p => p.X), 1e-9));
        Assert.Equal(["gangway, rear"], bodies[0].Parts.Skip(1).Select(p => p.Name));
        Assert.Equal(["gangway, front"], bodies[1].Parts.Skip(1).Select(p => p.Name));
        Assert.Equal(Rear(0) - 3, bodies[0].Parts[1].Outline.Min(p => p.X), 1e-9);
        var set = Assert.Single(project.Sets);
        Assert.Equal(bodies, set.Bodies);
        Assert.Equal([(BodyJointKind.SharedBogie, 6.0), (BodyJointKind.SharedBogie, 8.0)], set.Joints.Select(j => (j.Kind, j.Gap)));
    }

    [Fact]
    public void A_track_that_names_a_set_has_all_its_bodies()
    {
        var project = Samples.Sound(Samples.With(12, "width = 34\n" + Triplet), "track.vehicles=[\"coach\"]");
        Assert.Equal(3, project.VehiclesOn(project.Tracks[0]).Count);
        Assert.Single(project.SetsOn(project.Tracks[0]));
    }

    [Fact]
    public void The_first_body_of_a_set_is_called_by_its_own_name() =>
        Assert.Equal(["coach, motor car", "coach, body 2 of 3", "coach, brake end"],
            Samples.Sound(Samples.With(12, "width = 34\nbody_name = \"motor car\"\n" + Triplet)).Vehicles.Select(b => b.Name));

    /// <summary>Names of files with dashes are for keys; tables and drawings have the trade's words.</summary>
    [Fact]
    public void Vehicles_without_a_name_are_called_as_people_speak_of_them()
    {
        var bodies = Samples.Sound(PresetShelf.Sample("pendlewick-sets")!).Vehicles.Where(v => v.TruckOf is null);
        Assert.Equal(
            [
                "express engine with tender, engine", "express engine with tender, tender", "two-car unit, front car", "two-car unit, rear car",
                "branch triplet, leading coach", "branch triplet, middle coach", "branch triplet, brake coach",
            ],
            bodies.Select(b => b.Name));
        Assert.Equal("Corridor coach, 57 ft", Assert.Single(VehicleReader.Read("bogie-coach-57ft", new ModelScale(76.2)).Value!).Name);
        Assert.All(PresetShelf.Of(PresetKind.Vehicles), p => Assert.All(VehicleReader.Read(p.Name, new ModelScale(76.2)).Value!,
            v => Assert.DoesNotMatch("body [0-9]|[a-z0-9]-[a-z0-9]+-[a-z0-9]", v.Name)));
    }

    [Fact]
    public void A_track_may_name_a_vehicle_by_its_preset_or_by_what_it_is_called()
    {
        foreach (string name in new[] { "multiple-unit-two-car", "two-car unit" })
        {
            var project = Samples.Sound(PresetShelf.Sample("pendlewick-sets")!, $"track.vehicles=[\"{name}\"]");
            Assert.Equal(["two-car unit, front car", "two-car unit, rear car"], project.VehiclesOn(project.Tracks[0]).Select(v => v.Name));
        }
    }

    private const string Leading = "bogie_wheelbase = 34\ntrailing_bogie_wheelbase = 28\nlow = 10\nhigh = 50\nahead = 3\nsill = { height = 13 }\ntaper = { "
        + "length = 6, width = 30 }\n[[vehicle.body]]\njoined_by = \"coupling\"\ngap = 6\n";

    /// <summary>What is told to be taken over is what the body has: stating it changes nothing, and then nothing is told any more.</summary>
    [Fact]
    public void A_body_that_leaves_figures_out_is_told_with_all_that_it_takes_over_and_stating_them_changes_nothing()
    {
        const string All = "length = 228\npivots = 162\nwidth = 34\nlow = 10\nhigh = 50\nbogie_wheelbase = 34\ntrailing_bogie_wheelbase = 28\ntaper = { length "
            + "= 6, width = 30 }\nsill = { height = 13 }\n";
        string[] Told(string more) => [.. DesignRun.Design(Samples.Sound(Samples.With(12, "width = 34\n" + more)), RunWatch.None).Findings
            .Where(f => f.Code == "PF3070").Select(f => f.Message)];
        Assert.Equal(
            ["'coach, body 2 of 2' takes over from the first body of its set, mm: length 228, pivots 162, width 34, low 10, high 50, bogie_wheelbase 34, "
                + "trailing_bogie_wheelbase 28, taper of 6 to a width of 30, sill at 13."],
            Told(Leading));
        Assert.Empty(Told(Leading + All));
        var (left, stated) = (Bodies(Leading)[1], Bodies(Leading + All)[1]);
        Assert.Equal((left.PivotCentres, left.LeadingWheelbase, left.TrailingWheelbase),
            (stated.PivotCentres, stated.LeadingWheelbase, stated.TrailingWheelbase));
        Assert.Equal(left.Parts.SelectMany(p => p.Outline), stated.Parts.SelectMany(p => p.Outline));

        // What lies to one end is the body's own: the first stands 3 mm ahead of its pivots, the second does not.
        Assert.Equal(0, left.Parts[0].Outline.Sum(p => p.X), 1e-9);
        Assert.NotEqual(0, Bodies(Leading)[0].Parts[0].Outline.Sum(p => p.X), 1e-9);
    }

    [Fact]
    public void A_set_given_for_a_finished_platform_is_tried_with_all_its_bodies() =>
        Assert.Equal(3, VehicleReader.Read("articulated-triplet", new ModelScale(76.2)).Value!.Count);

    [Theory]
    [InlineData("vehicle.body.0.pivots=300", "vehicle[0].body[0].pivots", "235 mm")]
    [InlineData("vehicle.body.1.pivots=240", "vehicle[0].body[1].pivots", "at most 215 mm")]
    [InlineData("vehicle.body.1.pivots=30", "vehicle[0].body[1].pivots", "at least 34 mm")]
    [InlineData("vehicle.body.0.ahead=3", "vehicle[0].body[0].ahead", "length, pivots and gap")]
    [InlineData("vehicle.body.1.trailing_bogie_wheelbase=30", "vehicle[0].body[1].trailing_bogie_wheelbase", "Give bogie_wheelbase")]
    [InlineData("vehicle.body.0.gap=-1", "vehicle[0].body[0].gap", "from 0")]
    [InlineData("vehicle.body.0.sill={height=13,from=-200}", "vehicle[0].body[0].sill.from", "at least -113.5 mm")]
    public void What_a_shared_bogie_decides_cannot_be_stated_otherwise(string set, string key, string remedy)
    {
        string whole = Triplet.Replace("bogie_wheelbase = 30\n", "", StringComparison.Ordinal);
        var read = Samples.Read(Samples.With(12, "width = 34\n" + whole), set);
        var finding = Assert.Single(read.Findings);
        Assert.Equal(key, finding.Key);
        Assert.StartsWith("--set", finding.File, StringComparison.Ordinal);
        Assert.Contains(remedy, finding.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void A_shared_bogie_that_its_body_has_no_room_for_is_told_with_the_length_that_has()
    {
        string whole = Samples.With(12, "width = 34\n" + Triplet.Replace("bogie_wheelbase = 30\n", "", StringComparison.Ordinal));
        var finding = Assert.Single(Samples.Read(whole, "vehicle.body.0.bogie_wheelbase=400").Findings);
        Assert.Equal(("PF1014", "vehicle[0].body[1].pivots"), (finding.Code, finding.Key));
        Assert.Contains("a length of at least 230 mm and pivots of 217 mm", finding.Remedy, StringComparison.Ordinal);
        Samples.Sound(whole, "vehicle.body.0.bogie_wheelbase=400", "vehicle.body.1.length=230", "vehicle.body.1.pivots=217");
    }

    [Fact]
    public void Ends_taper_and_parts_may_have_a_plan_or_stand_at_both_ends_and_on_both_bogies()
    {
        var vehicle = Assert.Single(Bodies("""
            bogie_wheelbase = 34
            ahead = 5
            front_taper = { length = 20, width = 24 }
            rear_taper = { length = 10, width = 30 }
            [[vehicle.part]]
            name = "buffers"
            from = 119
            to = 126
            width = 26
            low = 12
            high = 16
            both_ends = true
            [[vehicle.part]]
            name = "frames"
            carrier = "both bogies"
            from = -24
            to = 22
            width = 30
            low = 2
            high = 9
            [[vehicle.part]]
            name = "cylinders"
            plan = [{ at = 50, width = 30 }, { at = 52, width = 36 }, { at = 70, width = 33 }]
            low = 2
            high = 12
            """));
        Assert.Equal([(-109, -15), (-99, -17), (99, -17), (119, -12), (119, 12), (99, 17), (-99, 17), (-109, 15)],
            vehicle.Parts[0].Outline.Select(p => ((int)p.X, (int)p.Y)));
        Assert.Equal(["body", "buffers, front", "buffers, rear", "leading frames", "trailing frames", "cylinders"], vehicle.Parts.Select(p => p.Name));
        Assert.Equal((-116, -109), ((int)vehicle.Parts[2].Outline.Min(p => p.X), (int)vehicle.Parts[2].Outline.Max(p => p.X)));
        Assert.Equal([PartCarrier.LeadingBogie, PartCarrier.TrailingBogie], vehicle.Parts.Skip(3).Take(2).Select(p => p.Carrier));
        Assert.Equal([(50, -15), (52, -18), (70, -16.5), (70, 16.5), (52, 18), (50, 15)], vehicle.Parts[5].Outline.Select(p => (p.X, p.Y)));
        Assert.Empty(VehicleRule.Findings(vehicle));
    }

    [Theory]
    [InlineData("taper = { length = 20, width = 36 }", "PF1014", "vehicle[0].taper", "at most 34 mm")]
    [InlineData("taper = { length = 120, width = 30 }", "PF1014", "vehicle[0].taper", "at most 228 mm together")]
    [InlineData("bogie_wheelbase = 240", "PF1014", "vehicle[0].bogie_wheelbase", "at most 66 mm")]
    [InlineData("bogie_wheelbase = 20\ntrailing_bogie_wheelbase = 310", "PF1014", "vehicle[0].trailing_bogie_wheelbase", "at most 66 mm")]
    [InlineData("bogie_wheelbase = 30\nahead = 100", "PF1014", "vehicle[0].ahead", "at most 18 mm")]
    [InlineData("ahead = -40", "PF1014", "vehicle[0].ahead", "at least -33 mm")]
    [InlineData("sill = { height = 13, to = 300 }", "PF1014", "vehicle[0].sill.to", "at most 114 mm")]
    [InlineData("ahead = 4\nsill = { height = 13, from = -111 }", "PF1014", "vehicle[0].sill.from", "at least -110 mm")]
    [InlineData("part = [{ name = \"a\", low = 1, high = 2, from = 1, to = 2 }]", "PF1009", "vehicle[0].part[0].width", "Add width")]
    [InlineData("part = [{ name = \"a\", low = 1, high = 2, from = 1, plan = [{ at = 1, width = 2 }, { at = 2, width = 2 }] }]", "PF1013",
        "vehicle[0].part[0].plan", "one of them")]
    [InlineData("part = [{ name = \"a\", low = 1, high = 2, plan = [{ at = 3, width = 2 }, { at = 2, width = 2 }] }]", "PF1014", "vehicle[0].part[0].plan",
        "farther forward")]
    public void Figures_of_a_vehicle_that_cannot_be_are_told_with_what_can(string line, string code, string key, string remedy)
    {
        var finding = Assert.Single(Samples.Read(Samples.With(12, "width = 34\n" + line)).Findings);
        Assert.Equal((code, key), (finding.Code, finding.Key));
        Assert.True(finding.Line > 0);
        Assert.Contains(remedy, finding.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(262, 250, 30, 0, 0)]
    [InlineData(262, 188, 188, 0, 0)]
    [InlineData(262, 262, 262, 0, 0)]
    [InlineData(262, 300, 150, 0, 20)]
    [InlineData(262, 150, 20, 120, 0)]
    [InlineData(262, 188, 30, 150, -200)]
    [InlineData(228.4, 40, 41, 0, 3.3)]
    public void What_is_named_for_wheels_and_bodies_that_do_not_fit_together_works(double length, double pivots, double wheelbase, double trailing,
        double ahead)
    {
        string? told = null;
        for (int round = 0; round < 4; round++)
        {
            string more = FormattableString.Invariant($"width = 34\nbogie_wheelbase = {wheelbase}\nahead = {ahead}\n")
                + (trailing > 0 ? FormattableString.Invariant($"trailing_bogie_wheelbase = {trailing}\n") : "");
            var faults = Samples.Read(Samples.With(12, more), FormattableString.Invariant($"vehicle.length={length}"),
                FormattableString.Invariant($"vehicle.pivots={pivots}")).Findings;
            if (faults.Count == 0)
            {
                Assert.NotNull(told);
                return;
            }

            // One figure a fault; the one that is named has to be the last word on it.
            var fault = Assert.Single(faults);
            Assert.NotEqual(told, fault.Key);
            told = fault.Key;
            string word = fault.Key[(fault.Key.LastIndexOf('.') + 1)..];
            var most = System.Text.RegularExpressions.Regex.Match(fault.Remedy, @"Give at (?:most|least) (-?[0-9.]+) mm");
            double figure = most.Success ? double.Parse(most.Groups[1].ValueSpan, System.Globalization.CultureInfo.InvariantCulture) : double.NaN;
            (pivots, wheelbase, trailing, ahead) = !most.Success
                ? (length / 2, length / 2, trailing > 0 ? length / 2 : 0, 0)
                : word switch
                {
                    "pivots" => (figure, wheelbase, trailing, ahead),
                    "ahead" => (pivots, wheelbase, trailing, figure),
                    "bogie_wheelbase" =>
                    (pivots, figure, trailing, ahead),
                    _ => (pivots, wheelbase, figure, ahead)
                };
        }

        Assert.Fail("still at fault");
    }

    /// <summary>Side play (16.5 − 14.5 − 2·0.8)/2 = 0.2; roll 1° about 5 mm moves a roof at 50 mm by 45·sin 1° = 0.785; cant 1 mm over 16.5 moves it by 50/16.5
    /// = 3.030.</summary>
    [Fact]
    public void Play_comes_from_gauge_and_wheels_and_lean_and_cant_from_height_line_by_line()
    {
        var budget =
            Samples.Sound(Samples.With(14, "running = 0.7\nback_to_back = 14.5\nflange = 0.8\npivot_play = 0.1\nroll = 1\nroll_centre = 5\ncant = 1\nlaying = "
                + "0.3\nsurvey = 0.4"))
            .Clearance.BudgetWith(9, 16.5, 12, 50);
        (string, double)[] lines = [.. budget.Lines.Select(l => (l.Name, Math.Round(l.AmountMm, 3)))];
        Assert.Equal(
            [("running clearance", 0.7), ("print tolerance", 0.2), ("fitting of the sections", 0.2), ("track laying", 0.3), ("survey residual", 0.4),
                ("wheelset play", 0.2), ("pivot play", 0.1), ("suspension roll", 0.785), ("cant", 3.03)],
            lines);
        Assert.Equal(1.8, budget.Sum, 1e-9);
        Assert.Equal(0.7 + Math.Sqrt(0.04 + 0.04 + 0.09 + 0.16), budget.RootOfSquares, 1e-9);
        Assert.Equal(budget.Sum + 0.3 + (45 * Math.Sin(Math.PI / 180)) + (50 / 16.5), budget.SumWithPlay, 1e-9);
        double low = Clearance.Sway.Of(budget.Play, VehiclePart.Box("steps", PartCarrier.Body, 0, 1, 1, 2, 12)),
            bogie = Clearance.Sway.Of(budget.Play, VehiclePart.Box("frames", PartCarrier.LeadingBogie, 0, 1, 1, 2, 12));

        // Both turn about rail top, the steps by the roll too about a line 5 mm above it: what a cosine takes off half a width of 0.5 mm counts.
        double cant = Math.Asin(1 / 16.5), both = cant + (Math.PI / 180);
        Assert.Equal((7 * Math.Sin(both)) + (5 / 16.5) - (0.5 * (1 - Math.Cos(both))), low, 1e-9);
        Assert.Equal((12 / 16.5) - (0.5 * (1 - Math.Cos(cant))), bogie, 1e-9);
    }

    [Theory]
    [InlineData("clearance.wheelset_play=1.65")]
    [InlineData("clearance.back_to_back=11.6")]
    [InlineData("vehicle.ahead=-33")]
    [InlineData("vehicle.sill={height=13,from=-114,to=114}")]
    public void The_values_that_are_named_for_play_and_places_work(string set) => Samples.Sound(Samples.Small, set);

    [Theory]
    [InlineData("back_to_back = 15.2", "PF1014", "at most 14.9 mm")]
    [InlineData("back_to_back = 14.5\nwheelset_play = 0.2", "PF1013", "one of them")]
    [InlineData("cant = 4", "PF1014", "at most 2.75 mm")]
    [InlineData("wheelset_play = 9", "PF1014", "at most 1.65 mm")]
    [InlineData("back_to_back = 8", "PF1014", "at least 11.6 mm")]
    public void Wheels_and_cant_that_the_gauge_does_not_allow_are_told(string line, string code, string remedy)
    {
        var finding = Assert.Single(Samples.Read(Samples.With(14, "running = 0.7\n" + line)).Findings);
        Assert.Equal((code, true), (finding.Code, finding.Line > 0));
        Assert.Contains(remedy, finding.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("[{ straight = 300 }, { curve = 80, length = 620, hand = \"left\" }, { straight = 300 }]", "PF2005")]
    [InlineData("[{ straight = 300 }, { curve = 80, angle = 90, hand = \"left\" }, { straight = 30 }]", "PF4003")]
    public void A_curve_too_tight_for_a_vehicle_is_told_beside_what_it_does_to_the_track(string alignment, string track)
    {
        var project = Samples.Sound(Samples.With(7, "alignment = " + alignment));
        var findings = DesignRun.Design(project, new(_ => { }, default)).Findings;
        Assert.Contains(findings, f => f.Code == track);
        var tight = Assert.Single(findings, f => f.Code == "PF3021");
        Assert.Equal(("vehicle[0].pivots", 11), (tight.Key, tight.Line));
        Assert.Contains("113.1 mm at most", tight.Remedy, StringComparison.Ordinal); // 80·√2
    }

    [Fact]
    public void A_least_radius_that_is_not_met_points_at_what_stated_it()
    {
        var project = Samples.Sound(Samples.Pendlewick, "vehicle[0].least_radius=900");
        var finding = Assert.Single(DesignRun.Design(project, new(_ => { }, default)).Findings, f => f.Severity == Severity.Error);
        Assert.Equal(("PF3022", "--set vehicle[0].least_radius=900"), (finding.Code, finding.File));
    }

    [Fact]
    public void The_form_for_a_vehicle_is_a_vehicle_as_it_stands_and_has_every_key()
    {
        using var folder = new Cli.TempFolder();
        File.WriteAllText(folder["mine.toml"], PlatformForge.Projects.Schemas.VehicleSheet.Write());
        var vehicle = Assert.Single(VehicleReader.Read(folder["mine.toml"], new ModelScale(76.2)).Value!);
        Assert.Equal(("my coach", 228, 162), (vehicle.Name, (int)vehicle.Length, (int)vehicle.PivotCentres));
        string form = File.ReadAllText(folder["mine.toml"]), page = File.ReadAllText(Path.Combine(House.SourceTree.Root, "docs", "vehicles.md"));
        foreach (string key in new[] { "length", "pivots", "bogie_wheelbase", "trailing_bogie_wheelbase", "width", "ahead", "low", "high", "body_name",
            "taper", "front_taper", "rear_taper", "sill", "middle_axle_play", "either_way", "least_radius", "joined_by", "gap", "gangway", "both_ends", "plan",
            "carrier", "leading_truck", "trailing_truck", "wheelbase", "pivot" })
        {
            Assert.Matches($@"(?m)^(# )?\[*([a-z]+\.)*{key}\b", form);
            Assert.Contains($"`{key}`", page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_middle_axle_without_room_is_warned_of_with_the_play_it_needs()
    {
        // 760 − √(760² − 94²) = 5.84
        var project = Samples.Sound(Samples.Pendlewick, "vehicle[0].middle_axle_play=1");
        var finding = Assert.Single(DesignRun.Design(project, new(_ => { }, default)).Findings, f => f.Code == "PF3025");
        Assert.Contains("5.84 mm aside", finding.Message, StringComparison.Ordinal);
        Assert.Contains("Give the axle 5.9 mm", finding.Remedy, StringComparison.Ordinal);
    }
}
