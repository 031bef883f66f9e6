using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Rules;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Solids.Kernel;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Backs;

/// <summary>Banks behind platforms, by the meshes of sections.</summary>
public class BankTests
{
    private const double Height = 20, Thick = 1.625, Deck = 1.5, Length = 150;

    private static readonly ModelScale Scale = new(76.2);

    /// <summary>A shell is what lies between two parallel slopes, a triangle less a smaller one; its root under the deck's edge is a third; webs close its
    /// ends. What the wall took is gone.</summary>
    [Theory]
    [InlineData(1, 0, Side.Left)]
    [InlineData(1, 0, Side.Right)]
    [InlineData(0.5, 0, Side.Left)]
    [InlineData(0.75, 4, Side.Right)]
    public void A_bank_has_the_volume_of_its_triangles(double slope, double ground, Side side)
    {
        double with = SolidRaiser.Volume([.. PlatformBody.Blocks(Straight(side, new() { Kind = BackKind.Bank, Slope = slope, Ground = ground })).All]);
        double without = SolidRaiser.Volume([.. PlatformBody.Blocks(Straight(side, new())).All]);
        double plumb = Thick / slope, outer = slope * (Height - ground), shell = ((outer * Height) - (outer * (Height - ground) / 2))
            - Hollow(Height, ground, outer, plumb, slope);
        double root = Math.Max(0, Math.Pow(Thick - (slope * Deck), 2) / (2 * slope)), under = Hollow(Height, ground, outer, plumb, slope);
        double wall = (Length - (2 * Thick)) * Thick * (Height - Deck);
        // end walls are laid to a grid step of 2⁻¹⁵ mm on either side
        Assert.Equal((Length * shell) + ((Length - (2 * Thick)) * root) + (2 * Thick * under) - wall, with - without, 5e-3);

        // Under the shell from the deck's edge to its foot's inner side, where the shell stands plumb.
        static double Hollow(double height, double ground, double outer, double plumb, double slope) =>
            (outer - Thick) * ((height - plumb + ground) / 2) is var whole && height - plumb > ground ? whole
                : Math.Max(0, slope * Math.Pow(height - plumb, 2) / 2);
    }

    /// <summary>A rib that hangs 5 mm under a level deck goes on under the bank as far down: an oblong from the front wall to the deck's edge, and beyond it
    /// what lies between its foot and the shell, which falls 1 in 0.95, a triangle. The shell's root under the edge is there without it.</summary>
    [Theory]
    [InlineData(Side.Left)]
    [InlineData(Side.Right)]
    public void Ribs_of_a_depth_hang_as_deep_under_a_bank(Side side)
    {
        const double deep = 5, thick = 1.25, slope = 0.95, under = Height - (Thick / slope), clear = 60 - 1 - Thick;
        PlatformPlan Plan(double pitch) => Workbench.Straight(420, side, s => s with
        {
            Back = new() { Kind = BackKind.Bank, Slope = slope },
            StartRamp = new(Gradient: 8),
            Ribs = new() { Pitch = pitch, Thickness = thick, LongitudinalCount = 0, Depth = deep },
        });
        var (with, without) = (Plan(30), Plan(0));
        double from = with.Profile.StartHead + 10, to = 600;
        var ribs = with.Ribs.Where(r => r.Kind == RibKind.Transverse && r.From > from && r.To < to).ToArray();
        Assert.True(ribs.Length >= 8);
        double triangle = slope * Math.Pow(under - (Height - Deck - deep), 2) / 2, root = Math.Pow(Thick - (slope * Deck), 2) / (2 * slope);
        double Level(PlatformPlan plan) => SolidRaiser.Volume([.. PlatformBody.Blocks(new FacetedPlan(plan), from, to).All]);
        Assert.Equal(ribs.Length * thick * ((clear * deep) + triangle - root), Level(with) - Level(without), 0.02); // ribs lie off the plan's grid
    }

    [Theory]
    [InlineData(Side.Left, true, 0, 0)]
    [InlineData(Side.Right, true, 60, 0)]
    [InlineData(Side.Left, false, 0, 5)]
    public void Sections_with_banks_are_sound_print_without_supports_and_fall_as_stated(Side side, bool ramps, double crossfall, double ground)
    {
        double slope = BankRule.Flattest(new() { Crossfall = crossfall }) - (ramps ? 0.01 : 0);
        var back = new BackSpec { Kind = BackKind.Bank, Slope = slope, Ground = ground };
        var plan = Workbench.Straight(ramps ? 420 : 300, side, s => s with
        {
            Back = back,
            Deck = s.Deck with { Crossfall = crossfall },
            StartRamp = ramps ? new(Gradient: 8, FootHeight: ground > 0 ? 2 : null) : null,
            Ribs = new() { Pitch = 30 },
        });
        var set = Workbench.Made(plan, Workbench.Printer, new());
        Assert.True(set.Sections.Count > 1);
        Assert.All(set.Sections, s => SoundSection.Check(s));
        Assert.All(set.Sections.Where(s => s.From >= plan.Profile.StartHead), s => Falls(s, slope, 1e-4));
    }

    [Fact]
    public void Banks_on_a_curve_are_sound_and_fall_as_stated()
    {
        var set =
            Workbench.Made(Workbench.PendlewickAs(p => p with
            {
                Back = new() { Kind = BackKind.Bank },
                Facing = FacingSpec.For(Scale) with { HasBack = false }
            }),
            Workbench.Printer, new());
        Assert.InRange(set.Plan.Bank!.Slope, 0.85, 0.94); // steeper than beside straight ramps
        Assert.Equal(0.95, PlatformForge.Exports.Reports.Forms.BackReport.Of(set)!.SlopeElsewhere);
        Assert.All(set.Sections, s => SoundSection.Check(s));
        Assert.All(set.Sections.Where(s => s.From >= set.Plan.Profile.StartHead && s.To <= set.Plan.Profile.EndHead),
            s => Falls(s, set.Plan.Bank!.Slope, 2e-3));
    }

    /// <summary>By cuts at all heights: the shell is as thick everywhere, level, as the back wall would be.</summary>
    [Fact]
    public void A_shell_is_nowhere_thinner_than_stated()
    {
        var mesh = SolidRaiser.Raise([.. PlatformBody.Blocks(Straight(Side.Left, new() { Kind = BackKind.Bank, Slope = 1 })).All]).Mesh;
        for (double z = 0.3; z < Height - Deck - 0.2; z += 0.5)
        {
            double back = Straight(Side.Left, new()).Back.Reach[0];
            double[] met = [.. Met(mesh, 275.37, z).Select(y => Math.Round(y, 5)).Distinct().Order()];
            Assert.Equal(4, met.Length);
            Assert.Equal(Thick, met[3] - met[2], 2e-4);
            Assert.Equal(back + (Height - z), met[3], 2e-4);
        }
    }

    [Fact]
    public void A_bank_that_is_too_flat_or_has_nothing_to_fall_to_is_refused_with_a_figure_that_is_taken()
    {
        var flat = Assert.Single(Rules(s => s with { Back = new() { Kind = BackKind.Bank, Slope = 1.5 } }));
        var fallen = Assert.Single(Rules(s => s with { Back = new() { Kind = BackKind.Bank }, Deck = s.Deck with { Crossfall = 20 } }));
        var high = Assert.Single(Rules(s => s with { Back = new() { Kind = BackKind.Bank, Ground = 20 } }));
        Assert.Equal(["PF4170", "PF4170", "PF4173"], new[] { flat.Code, fallen.Code, high.Code });
        Assert.Empty(Rules(s => s with { Back = new() { Kind = BackKind.Bank, Slope = Figure(flat) } }));
        Assert.Empty(Rules(s => s with { Back = new() { Kind = BackKind.Bank, Slope = Figure(fallen) }, Deck = s.Deck with { Crossfall = 20 } }));
        Assert.Empty(Rules(s => s with { Back = new() { Kind = BackKind.Bank, Ground = Figure(high) } }));

        static double Figure(Finding finding) => double.Parse(finding.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture);
    }

    /// <summary>Beside a ramp of 1 in g the face, which falls 1 in n square to the edge, and the deck lie at an angle whose tangent is 1 / (n √(1 +
    /// 1/g²)): by the
    /// cross product of what both hold, the edge, and their lines square to it.</summary>
    [Theory]
    [InlineData(Side.Left, 8)]
    [InlineData(Side.Right, 6)]
    public void Beside_a_ramp_a_bank_is_refused_that_lies_flatter_to_the_deck_than_45_degrees(Side side, double gradient)
    {
        PlatformRequest Asked(double slope) => Platforms.Bench.Straight(s => s with
        {
            Face = s.Face with { Side = side },
            Back = new() { Kind = BackKind.Bank, Slope = slope },
            StartRamp = new(Gradient: gradient, FootHeight: 2),
        });
        var told = Assert.Single(PlatformPlanner.Plan(Asked(1)).Findings, f => f.Severity == Severity.Error);
        double angle = Math.Atan(1 / Math.Sqrt(1 + (1 / (gradient * gradient)))) * 180 / Math.PI;
        Assert.Equal(("PF4170", true), (told.Code, told.Message.Contains(FormattableString.Invariant($" {angle:0.0#} degrees"), StringComparison.Ordinal)));
        double cure = double.Parse(told.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(Math.Floor(100 / Math.Sqrt(1 + (1 / (gradient * gradient)))) / 100, cure, 1e-9);
        Assert.DoesNotContain(PlatformPlanner.Plan(Asked(cure)).Findings, f => f.Code == "PF4170");
        Assert.DoesNotContain(PlatformPlanner.Plan(Asked(new BackSpec().Slope)).Findings, f => f.Code == "PF4170");
    }

    /// <summary>On a curve a ramp falls towards its back too. What is offered there lies at 45 degrees or more on the bed, triangle by triangle as
    /// it is printed.</summary>
    [Fact]
    public void Beside_ramps_on_a_curve_all_of_a_bank_lies_at_45_degrees_or_more_on_the_bed()
    {
        PlatformSpec As(PlatformSpec p, double slope) => p with
        {
            Back = new() { Kind = BackKind.Bank, Slope = slope },
            Facing = FacingSpec.For(Scale) with { HasBack = false },
        };
        var told = new List<Finding>();
        BankAngleRule.Check(Workbench.PendlewickAs(p => As(p, 0.8)) is var plan ? plan with { Spec = As(plan.Spec, 1) } : plan, told);
        double cure = double.Parse(Assert.Single(told).Cure!.Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(cure, 0.85, 0.98);
        var set = Workbench.Made(Workbench.PendlewickAs(p => As(p, cure)), Workbench.Printer, new());
        Assert.Contains(set.Sections, s => s.To <= set.Plan.Profile.StartHead + 1e-6 || s.From >= set.Plan.Profile.EndHead - 1e-6);
        foreach (var section in set.Sections)
        {
            var lying = section.PrintMesh();
            var turf = Enumerable.Range(0, lying.TriangleCount).Where(t => lying.Paints[t] == (byte)Paint.Turf).Select(t => Normal(lying, t))
                .Where(n => n.Z < 0 && n.Length > 0.5).Select(n => Math.Acos(-n.Z / n.Length) * 180 / Math.PI).ToArray();
            Assert.NotEmpty(turf);
            Assert.All(turf, angle => Assert.True(angle > 44.95, FormattableString.Invariant($"{section.Name}: {angle:0.000}")));
        }
    }

    /// <summary>A bank of its own is a prism: half of its width times its height, or, on higher ground, with the oblong under that.</summary>
    [Theory]
    [InlineData(1.5, 0, Side.Left)]
    [InlineData(2, 0, Side.Right)]
    [InlineData(2, 6, Side.Left)]
    public void A_bank_that_is_a_print_of_its_own_is_a_prism_that_nothing_hangs_over(double slope, double ground, Side side)
    {
        var set = Workbench.Made(Straight(side, new() { Kind = BackKind.Bank, Apart = true, Slope = slope, Ground = ground, Fit = 0.25 }),
            Workbench.Printer, new());
        Assert.All(set.Sections, s => SoundSection.Check(s));
        Assert.Equal(set.Sections.Count, set.Lines.Pieces.Count);
        double back = set.Plan.Back.Reach[0];
        foreach (var piece in set.Lines.Pieces)
        {
            var mesh = piece.Solid.Mesh;
            double length = mesh.Vertices.Max(v => v.X) - mesh.Vertices.Min(v => v.X), high = Height - ground;
            double wide = mesh.Vertices.Max(v => Math.Abs(v.Y)) - mesh.Vertices.Min(v => Math.Abs(v.Y)); // laid to the plan's grid at either side
            Assert.Equal(slope * high, wide, 1e-4);
            Assert.Equal(length * wide * (ground + (high / 2)), piece.Solid.ColumnVolume, 0.05); // half a step of the grid, 1.5e-5 mm, of a side 20 by 150
            Assert.Equal(back + 0.25, mesh.Vertices.Min(v => Math.Abs(v.Y)), 1e-4);
            Upright(piece, slope, 1e-4);
        }

        Assert.Null(PlatformForge.Exports.Reports.Forms.BackReport.Of(set)!.SlopeElsewhere);

        // The sections are those of a platform with a wall.
        var walled = Workbench.Made(Straight(side, new()), Workbench.Printer, new());
        Assert.Equal(walled.Sections.Sum(s => s.Volumes.Plain), set.Sections.Sum(s => s.Volumes.Plain), 1e-6);
    }

    [Fact]
    public void A_bank_of_its_own_on_a_curve_with_ramps_is_sound_and_falls_as_stated()
    {
        var set =
            Workbench.Made(Workbench.PendlewickAs(p => p with
            {
                Back = new() { Kind = BackKind.Bank, Apart = true, Slope = 1.5 },
                Facing = FacingSpec.For(Scale) with { HasBack = false }
            }), Workbench.Printer, new());
        Assert.Equal(set.Sections.Count, set.Lines.Pieces.Count);
        Assert.All(set.Sections, s => SoundSection.Check(s));
        Assert.All(set.Lines.Pieces, p => Upright(p, set.Sections[p.Section - 1] is var s && s.From >= set.Plan.Profile.StartHead
            && s.To <= set.Plan.Profile.EndHead ? 1.5 : null, 3e-3));
        Assert.Equal(set.Lines.Pieces.Count(p => p.Made.Name == LineMake.Bank), set.Lines.Plates.Sum(p => p.Pieces.Count));
    }

    [Fact]
    public void A_bank_of_its_own_that_lies_on_no_bed_is_refused_with_a_slope_that_is_taken()
    {
        var back = new BackSpec { Kind = BackKind.Bank, Apart = true, Slope = 5 };
        var bed = PrinterSpec.Oblong(220, 100, 250);
        var told = SectionMaker.Make(Straight(Side.Left, back), bed, new()).Findings.Single(f => f.Severity == Severity.Error);
        Assert.Equal(("PF5066", "platform[0].back.slope"), (told.Code, told.Key));
        double slope = double.Parse(told.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(slope, 3, 4.9);
        Assert.True(SectionMaker.Make(Straight(Side.Left, back with { Slope = slope }), bed, new()).Succeeded);
    }

    // As it is printed: closed, on its foot, all else upright or looking up, its face at its slope.
    private static void Upright(LinePiece piece, double? slope, double by)
    {
        var mesh = piece.WrittenMesh();
        Assert.True(Meshes.MeshCheck.Inspect(mesh) is { IsClosed: true, DegenerateTriangles: 0, Components: 1 });
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            var normal = Normal(mesh, t);
            double level = Enumerable.Range(3 * t, 3).Max(i => mesh.Vertices[mesh.Triangles[i]].Z);
            Assert.True(normal.Z > -1e-5 * normal.Length || level < 1e-4);
            if (slope is { } s && normal.Z > 0.1 * normal.Length && normal.Length > 0.5)
            {
                Assert.Equal(s, normal.Z / Math.Sqrt((normal.X * normal.X) + (normal.Y * normal.Y)), by);
            }
        }
    }

    [Theory]
    [InlineData(BackKind.Bank)]
    [InlineData(BackKind.Open)]
    public void Piers_for_both_walls_are_told_where_the_back_has_none_and_made_where_it_has(BackKind kind)
    {
        PlatformPlan Plan(BackSpec back, PierWalls on) => Workbench.Straight(
            200, change: s => s with
            {
                Back = back,
                Facing = FacingSpec.For(Scale)
                with
                { HasBack = back.Kind == BackKind.Wall, Piers = PierSpec.For(Scale) with { On = on } }
            });
        List<Finding> Told(PlatformPlan plan)
        {
            var told = new List<Finding>();
            BankRule.Check(plan.Spec, plan.Site, told);
            return told;
        }

        var hidden = Plan(new() { Kind = kind, Apart = kind == BackKind.Bank }, PierWalls.Both);
        var finding = Assert.Single(Told(hidden), f => f.Key.EndsWith("facing.piers.on", StringComparison.Ordinal));
        Assert.Equal(("PF4171", "\"front\""), (finding.Code, finding.Cure!.Value));
        Assert.DoesNotContain(PlatformPlanner.Divided(hidden, []).Value!.Piers, p => p.IsFar);
        Assert.Empty(Told(Plan(hidden.Spec.Back, PierWalls.Front)));

        // Behind a retaining wall the platform's own back is a wall, and has them.
        var retained = Plan(new() { Retaining = RetainingSpec.For(Scale) }, PierWalls.Both);
        Assert.Empty(Told(retained));
        Assert.Contains(PlatformPlanner.Divided(retained, []).Value!.Piers, p => p.IsFar);
    }

    [Fact]
    public void What_is_asked_for_on_a_wall_that_is_not_there_is_told()
    {
        var facing = FacingSpec.For(Scale) with
        {
            HasBack = false,
            Back = WallFinish.Stone,
            Piers = new() { On = PierWalls.Back },
            Openings = [new() { IsBack = true }]
        };
        var told = Rules(s => s with { Back = new() { Kind = BackKind.Open }, Facing = facing });
        Assert.Equal(["platform[0].facing.back", "platform[0].facing.piers.on", "platform[0].facing.opening[0].on"], told.Select(f => f.Key));
        Assert.All(told, f => Assert.Equal("PF4171", f.Code));
        var island = Assert.Single(Rules(s => s with { Back = new() { Kind = BackKind.Open }, OtherFace = s.Face with { Key = "other_face" } }));
        Assert.Equal(("PF4172", "platform[0].back"), (island.Code, island.Cure!.Key));
    }

    /// <summary>Without a wall behind, deck and ribs end at the back plane: what the wall held more is gone, ribs and ends are longer by it.</summary>
    [Theory]
    [InlineData(Side.Left)]
    [InlineData(Side.Right)]
    public void An_open_back_has_no_wall_and_its_ribs_end_at_the_backscene(Side side)
    {
        var plan = Workbench.Straight(300, side, s => s with
        {
            Back = new() { Kind = BackKind.Open },
            Deck = s.Deck with { Width = 30 },
            Ribs = new() { Pitch = 30, LongitudinalCount = 0 }
        });
        var set = Workbench.Made(plan, Workbench.Printer, new());
        Assert.All(set.Sections, s => SoundSection.Check(s));
        double back = plan.Back.Reach[0];
        Assert.All(set.Plan.Ribs.Where(r => r.Kind != RibKind.Longitudinal), r => Assert.Equal(back, r.Far.Reach[0], 1e-9));

        // At mid height nothing is met behind the front wall between two ribs; at a rib the back plane is.
        var rib = set.Plan.Ribs.First(r => r.Kind == RibKind.Transverse);
        var mesh = set.Sections[0].Solid.Mesh;
        double way = side == Side.Left ? 1 : -1, farthest = Met(mesh, rib.From - 3.3, 9.7).Max(y => way * y);
        Assert.InRange(farthest, 0, plan.WallBack.Reach[0] + 2.5);
        Assert.Equal(back, Met(mesh, (rib.From + rib.To) / 2, 9.7).Max(y => way * y), 1e-4);
    }

    private static List<Finding> Rules(Func<PlatformSpec, PlatformSpec> change)
    {
        var findings = new List<Finding>();
        var plan = Straight(Side.Left, new());
        BankRule.Check(change(plan.Spec), plan.Site, findings);
        return findings;
    }

    private static PlatformPlan Straight(Side side, BackSpec back) => Workbench.Straight(Length, side, s => s with { Back = back });

    // Every triangle of the turfed face, by its normal.
    private static void Falls(PlatformSection section, double slope, double by)
    {
        var mesh = section.Solid.Mesh;
        var faces = Enumerable.Range(0, mesh.TriangleCount).Where(t => mesh.Paints[t] == (byte)Paint.Turf).Select(t => Normal(mesh, t))
            .Where(n => n.Z > 0.2 && n.Length > 0.5).ToArray();
        Assert.NotEmpty(faces);
        Assert.All(faces, n => Assert.Equal(slope, n.Z / Math.Sqrt((n.X * n.X) + (n.Y * n.Y)), by));
    }

    private static Point3 Normal(Mesh mesh, int t)
    {
        Point3 a = mesh.Vertices[mesh.Triangles[3 * t]], b = mesh.Vertices[mesh.Triangles[(3 * t) + 1]], c = mesh.Vertices[mesh.Triangles[(3 * t) + 2]];
        return Point3.Cross(b - a, c - a);
    }

    // Where a line along y at an x and a height meets the mesh, each place once.
    private static IEnumerable<double> Met(Mesh mesh, double x, double z)
    {
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[3 * t]], b = mesh.Vertices[mesh.Triangles[(3 * t) + 1]], c = mesh.Vertices[mesh.Triangles[(3 * t) + 2]];
            double area = ((b.X - a.X) * (c.Z - a.Z)) - ((c.X - a.X) * (b.Z - a.Z));
            double u = (((x - a.X) * (c.Z - a.Z)) - ((c.X - a.X) * (z - a.Z))) / area, v = (((b.X - a.X) * (z - a.Z)) - ((x - a.X) * (b.Z - a.Z))) / area;
            if (u >= 0 && v >= 0 && u + v <= 1)
            {
                yield return a.Y + (u * (b.Y - a.Y)) + (v * (c.Y - a.Y));
            }
        }
    }
}
