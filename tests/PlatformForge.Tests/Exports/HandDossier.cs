using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Exports.Files;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Sections.Forms;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Tests.Exports;

/// <summary>
/// A platform put together by hand, so that writers are tested without the rooms before them: Pendlewick's track, a plain
/// reach, sections drawn from one cross-section.
/// </summary>
internal static class HandDossier
{
    private const double From = 270, To = 1000, RailTop = 8, Height = 12, Ramp = 96, Deck = 1.5, Coping = 1.2, Wall = 1.6;
    private static readonly int[] CapTriangles = [12, 0, 1, 12, 1, 11, 1, 2, 3, 1, 3, 4, 1, 4, 5, 1, 5, 6, 1, 6, 11, 11, 6, 7, 11, 7, 10, 10, 7, 8, 10, 8, 9];
    private static readonly byte[] ProfilePaints = [3, 1, 1, 1, 2, 1, 0, 3, 3, 3, 3, 3, 3];

    public static Dossier Pendlewick(Side side = Side.Right)
    {
        var line = TrackLayer.Lay(new("up", new(0, 0), 0.05, [new StraightSpec(300), new TransitionSpec(260, 760, Hand.Left), new CurveSpec(760, Hand.Left,
            620), new TransitionSpec(200, 1500, Hand.Left), new StraightSpec(20)])).Value!;
        Vehicle[] vehicles =
        [
            new("long coach", 188, 34, 34, [VehiclePart.Box("body", PartCarrier.Body, -131, 131, 34.5, 3, 50)]) { Sill = new(17.25, 15, -125, 125) },
            new("suburban coach", 162, 32, 32, [VehiclePart.Box("body", PartCarrier.Body, -114, 114, 34, 3, 48)]) { Sill = new(17, 15, -110, 110) },
            new("tank engine", 66, 0, 0, [VehiclePart.Box("body", PartCarrier.Body, -71, 71, 33.5, 6, 46), VehiclePart.Box("cylinders", PartCarrier.Body, 56,
                76, 36, 2, 10)]),
        ];
        var platform = Platform(line, side, vehicles);
        return new()
        {
            Project = "Pendlewick",
            Scale = new(76.2),
            Gauge = 16.5,
            RailTop = RailTop,
            Tracks = [new(line, vehicles)],
            Printer = PrinterSpec.Oblong(220, 220, 250),
            Platforms = [platform],
            Findings = [Finding.Warning("PF4999", "platform[0]", "The gap is wider than the published limit.", "Choose a fitted edge.")],
            InputHash = new string('5', 64),
            Version = "0.1.0",
        };
    }

    private static PlatformDossier Platform(Centreline line, Side side, Vehicle[] vehicles)
    {
        double[] stations = [.. Enumerable.Range(0, 147).Select(i => From + ((To - From) * i / 146))];
        double Reach(double s, int vehicle)
        {
            double curve = Math.Clamp((s - 240) / 300, 0, 1);
            return vehicle switch { 0 => 17.3 + (5.1 * curve), 1 => 17.1 + (3.2 * curve), _ => 18 + (0.4 * curve) };
        }

        double[] fine = [.. Enumerable.Range(0, 731).Select(i => From + i)];
        int Governs(double s) => Reach(s, 0) > Reach(s, 2) ? 0 : 2;
        double[] swept = [.. fine.Select(s => Reach(s, Governs(s)))];
        var budget = ClearanceBudget.Of(0.8, 0.2, 0.2, play: new RunningPlay(0.3));
        var fitted = new PlanLine(stations, [.. stations.Select(s => Reach(s, Governs(s)) + budget.Margin + 0.02)]);
        var faired = new PlanLine(stations, [.. stations.Select((_, i) => fitted.Reach[i] + (0.15 * Math.Sin(Math.PI * i / 146)))]);
        var uniform = new PlanLine(stations, [.. stations.Select(_ => fitted.Reach.Max())]);
        var spec = new PlatformSpec("Pendlewick up side", new("up", side, From, To))
        {
            Height = Height,
            StartRamp = new(Length: Ramp),
            EndRamp = new(Length: Ramp),
            Deck = new() { Width = 62, Crossfall = 80 },
        };
        double[] joints = [.. Enumerable.Range(1, 60).Select(i => From + (i * (To - From) / 61))];
        double[] cuts = [joints[15], joints[30], joints[45]];
        var profile = new HeightProfile(From, From + Ramp, To - Ramp, To, RailTop, RailTop + Height, RailTop);
        var traces = vehicles.Take(2).Select((v, k) => new GapTrace(
            v.Name, fine, [.. fine.Select(s => fitted.At(s) - Reach(s, k) + 0.1)], [.. fine.Select(s => fitted.At(s) - 17
                + (1.6 * Math.Clamp((s - 240) / 300, 0, 1)))])).ToArray();
        var rows = from style in Enum.GetValues<EdgeStyle>()
                   from k in (int[])[0, 1]
                   select new GapRow(style, vehicles[k].Name, 1.1 + (0.4 * (int)style), 300, 2.2 + (0.5 * (int)style), 4.1 + (0.5 * (int)style), 700, 3, 76.2);
        var face = new FacePlan
        {
            RailTop = 8,
            Spec = spec.Face,
            Chart = line,
            Stations = stations,
            CopingFront = fitted,
            CopingBack = fitted.Shifted(7.9),
            WallFace = fitted.Shifted(1),
            WallBack = fitted.Shifted(1 + Wall),
            Profile = profile,
            CopingJoints = joints,
            WhiteLine = new(From + Ramp, To - Ramp, fitted.Shifted(0.8), fitted.Shifted(1.8), new(LineMake.White, LineForm.Paint, 0)),
            Requirement = new(fine, swept, budget.Margin, [.. fine.Select(Governs)], [.. fine.Select(s => Governs(s) == 0 ? "body" : "cylinders")],
                [.. vehicles.Select(v => v.Name)]),
            Alternatives = [fitted, faired, uniform],
            Gaps = new([.. rows], traces),
        };
        var plan = new PlatformPlan
        {
            Spec = spec,
            Site = new(new(76.2), RailTop),
            Faces = [face],
            Body = new()
            {
                Stations = stations,
                CopingFront = fitted,
                CopingBack = fitted.Shifted(7.9),
                WallFace = fitted.Shifted(1),
                WallBack = fitted.Shifted(1 + Wall),
                BackWallFace = fitted.Shifted(62 - Wall),
                FarWallFace = fitted.Shifted(62),
                Back = fitted.Shifted(62),
                Lines = [new(From + Ramp, To - Ramp, fitted.Shifted(0.8), fitted.Shifted(1.8), new(LineMake.White, LineForm.Paint, 0))],
            },
            Ribs = [.. Enumerable.Range(1, 23).Select(i => new PlanRib(RibKind.Transverse, From + (i * 30.5) - 0.6, From + (i * 30.5) + 0.6,
                fitted.Shifted(2.6), fitted.Shifted(60.4), null)), new PlanRib(RibKind.Longitudinal, From, To, fitted.Shifted(31), fitted.Shifted(32.2), null)],
            Features = [.. new[] { 420.0, 448 }.Select(s => Board(line, side, s)), Posts(fitted)],
            CutCandidates = [.. joints.Select(j => new CutCandidate(j, CutRank.Joint))],
        };
        plan = plan with { Surface = HingedDeck.Uncut(plan) };
        var parts = vehicles.SelectMany((v, k) => v.Parts.Select(p =>
        {
            double[] own = [.. fine.Select(s => p.Name == "cylinders" ? Reach(s, 2) : k == 2 ? 17 : Reach(s, k))];
            return new PartReach(0, v, p, own, own);
        })).ToArray();
        return new(plan, new(From, 1, fine.Length, parts, 0.01), budget, Sections(plan, cuts));
    }

    private static PlannedFeature Board(Centreline line, Side side, double s)
    {
        var place = new PlanPlace(s, 62);
        Point2 middle = line.PointAt(s, side.Outward(62)), x = line.At(s).Tangent * 0.85, y = x.Left;
        return new("running-in board", FormattableString.Invariant($"platform[0].board[{s}]"))
        {
            Openings = [new("running-in board", place, 1.7, 1.7, false, 4, 1.2)],
            Marks = [new AreaMark("socket", place, [middle - x - y, middle + x - y, middle + x + y, middle - x + y], 1.7, 1.7) { Label = "running-in board" }],
            SetOuts = [new(s, "running-in board")],
        };
    }

    private static PlannedFeature Posts(PlanLine fitted)
    {
        PlanPlace[] posts = [.. Enumerable.Range(0, 23).Select(i => new PlanPlace(From + 4 + (i * 32.8), fitted.At(From + 4 + (i * 32.8)) + 59.5))];
        return new("fence", "platform[0].fence")
        {
            Openings = [.. posts.Select(p => new Opening("fence", p, 1.2, 1.2, true, null, 0))],
            Marks = [.. posts.Select(p => new CircleMark("post hole", p, 1.2))],
        };
    }

    private static SectionSet Sections(PlatformPlan plan, double[] cuts)
    {
        double[] ends = [From, .. cuts, To];
        var printer = PrinterSpec.Oblong(220, 220, 250);
        var sections = new List<PlatformSection>();
        for (int i = 0; i + 1 < ends.Length; i++)
        {
            var mesh = Sweep(plan, ends[i] + (i == 0 ? 0 : 0.1), ends[i + 1] - (i + 2 == ends.Length ? 0 : 0.1));
            var frame = plan.Chart.At((ends[i] + ends[i + 1]) / 2);
            var turned = mesh.Moved(RigidTransform.AboutZ(-frame.Heading)).Box().Low;
            var toLayout = RigidTransform.Shift(turned.X, turned.Y, turned.Z).Then(RigidTransform.AboutZ(frame.Heading));
            var size = mesh.Moved(toLayout.Inverse()).Box().High;
            double volume = mesh.Volume();
            sections.Add(new(plan.Spec.Name, i + 1, ends.Length - 1, ends[i], ends[i + 1], new(mesh, volume), toLayout, new(volume, 0, 0, 0, 0),
                PrintPose.Upright,
                [new(0, 0), new(size.X, 0), new(size.X, size.Y), new(0, size.Y)], size, PrintEstimate.Of(volume, volume, volume / 28800, printer), new(0, 12,
                    18)));
        }

        Plate PlateOf(int number, params PlatformSection[] on) => new(
            number, [.. on.Select((s, i) => new PlacedSection(s, RigidTransform.Shift(10, 10 + (100 * i), 0)))],
                PrintEstimate.Sum(on.Select(s => s.Estimate), printer));
        return new(plan.Spec.Name, sections, [PlateOf(1, sections[0], sections[1]), PlateOf(2, sections[2], sections[3])], cuts,
            [new("dowel from 1.75 mm filament", 1.75, 12, 6)], PrintEstimate.Sum(sections.Select(s => s.Estimate), printer))
        {
            Plan = plan,
            CountReason = "Four sections: 730 mm of platform, the bed takes 204 mm.",
        };
    }

    private static Mesh Sweep(PlatformPlan plan, double from, double to)
    {
        double[] stations = [from, .. plan.Stations.Where(s => s > from + 0.01 && s < to - 0.01), to];
        var vertices = new List<Point3>();
        foreach (double s in stations)
        {
            double f = plan.CopingFront.At(s), h = plan.Profile.At(s), w = f + 1, b = f + 62, hb = plan.TopAt(s, b);
            (double T, double Z)[] ring =
            [
                (w, 0), (w, h - Coping), (f, h - Coping), (f, h), (f + 0.8, h), (f + 1.8, h), (f + 7.9, h), (b, hb),
                (b, 0), (b - Wall, 0), (b - Wall, hb - Deck), (w + Wall, h - Deck), (w + Wall, 0),
            ];
            vertices.AddRange(ring.Select(p => plan.ToLayout(s, p.T) is var q ? new Point3(q.X, q.Y, p.Z) : default));
        }

        var triangles = new List<int>();
        var paints = new List<byte>();
        int n = ProfilePaints.Length, last = vertices.Count - n;
        for (int row = 0; row + 1 < stations.Length; row++)
        {
            for (int i = 0; i < n; i++)
            {
                int a = (row * n) + i, b = (row * n) + ((i + 1) % n);
                triangles.AddRange([a, a + n, b + n, a, b + n, b]);
                byte paint = ProfilePaints[i] == 2 && (stations[row] < From + Ramp || stations[row] >= To - Ramp) ? (byte)1 : ProfilePaints[i];
                paints.AddRange([paint, paint]);
            }
        }

        for (int i = 0; i < CapTriangles.Length; i += 3)
        {
            triangles.AddRange([CapTriangles[i], CapTriangles[i + 1], CapTriangles[i + 2]]);
            triangles.AddRange([last + CapTriangles[i], last + CapTriangles[i + 2], last + CapTriangles[i + 1]]);
            paints.AddRange([3, 3]);
        }

        var mesh = new Mesh([.. vertices], [.. triangles], [.. paints]);
        if (mesh.Volume() > 0)
        {
            return mesh;
        }

        for (int i = 0; i < triangles.Count; i += 3)
        {
            (triangles[i], triangles[i + 1]) = (triangles[i + 1], triangles[i]);
        }

        return mesh with { Triangles = [.. triangles] };
    }
}
