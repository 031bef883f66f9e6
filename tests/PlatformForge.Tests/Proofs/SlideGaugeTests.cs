using PlatformForge.Geometry;
using PlatformForge.Projects.Runs;
using PlatformForge.Proofs;
using PlatformForge.Tests.Projects;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Proofs;

/// <summary>
/// Slide gauges as their STL files hold them, stood on the rails by the manifest and held against rails, platform and vehicles by arithmetic of the tests' own:
/// points and level cuts only, nothing of what made or verified them.
/// </summary>
public class SlideGaugeTests
{
    private const double Slant = 0.05; // mm by which an edge that tapers by 1 in 40 comes nearer over half a blade, and a little for its bend

    public static TheoryData<string> Projects() => ["pendlewick", "left", "quillhaven", "thornhithe", "faced"];

    private static readonly Dictionary<string, Lazy<ProofSets>> Sets = new()
    {
        ["pendlewick"] = ProofSets.Pendlewick,
        ["left"] = new(() => new(Samples.Pendlewick, "platform[0].face.side=left", "platform[0].face.edge=uniform", "gauges.at=[300, 640, 985]")),
        ["quillhaven"] = new(() => new(PlatformForge.Projects.Presets.PresetShelf.Sample("quillhaven")!)),
        ["faced"] = new(() => new(PlatformForge.Projects.Presets.PresetShelf.Sample("tawnybrook")!, "gauges.at=[440]")),
        ["thornhithe"] = new(() => new(PlatformForge.Projects.Presets.PresetShelf.Sample("thornhithe")!)),
    };

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_gauge_rides_on_both_rails_and_its_tongues_go_between_them_with_the_play_that_it_says(string name)
    {
        var set = Sets[name].Value;
        Assert.NotEmpty(set.Of("slide gauge"));
        foreach (var gauge in set.Of("slide gauge"))
        {
            var placed = set.Placed(gauge);
            var ride = set.Dossier.Tracks.Single(t => t.Ride.Name == gauge.Rides!.Track).Ride;
            double half = set.Dossier.Gauge / 2, top = set.Dossier.RailTop, play = set.Figure(gauge, ProofFigure.Play);
            var low = placed.Vertices.Where(v => v.Z < top - 0.1).Select(v => ride.Locate(new(v.X, v.Y)).Offset)
                .Where(d => Math.Abs(d) < half + set.Dossier.RailHead).ToArray();

            // What hangs below rail top between the rails reaches to within the play of both running faces, where it comes nearest.
            Assert.Equal(half - play, low.Max(), 0.01);
            Assert.Equal(-half + play, low.Min(), 0.01);

            // Over the heads the lowest faces lie at rail top, on both rails.
            foreach (int side in (int[])[-1, 1])
            {
                var (u0, u1) = (side * (half + 0.05), side * (half + set.Dossier.RailHead - 0.05));
                double lowest = Lowest(placed, ride, gauge.Rides!.Chainage, u0, u1);
                Assert.Equal(top, lowest, 0.001);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_gauge_touches_neither_coping_nor_wall_and_shows_the_figures_stated_and_engraved(string name)
    {
        var set = Sets[name].Value;
        foreach (var gauge in set.Of("slide gauge"))
        {
            var face = set.Dossier.Platforms.SelectMany(p => p.Faces).Single(f => f.Name == gauge.Platform && f.Track == gauge.Rides!.Track);
            var plan = face.Plan;
            double air = set.Figure(gauge, ProofFigure.Air), top = set.Dossier.RailTop;

            // In the frame of the track: reach and height of every corner of gauge and sections near the blade.
            var blade = set.Made(gauge).Solid.Mesh;
            double coping = set.Figure(gauge, "coping from the track's middle"), height = set.Figure(gauge, "coping's top above rail top");
            Assert.Equal(plan.CopingFront.At(gauge.Rides!.Chainage), coping, 0.03); // the edge's chord, square to the ride and not to its chart
            Assert.Equal(plan.TopAt(gauge.Rides.Chainage, coping) - top, height, 0.002);

            // The nose stands the air before the coping, the arm the air above it, the toe the air before the wall's foot.
            var corners = blade.Vertices;
            double arm = corners.Where(v => v.X > coping + 1).Min(v => v.Y);
            double slope = Math.Abs(plan.TopAt(gauge.Rides.Chainage + 1.5, coping) - plan.TopAt(gauge.Rides.Chainage - 1.5, coping)) / 2;
            Assert.Equal(height + slope + air, arm, 0.02);
            Assert.Equal(coping - air, Farthest(blade, (1 + arm) / 2), Slant);
            if (set.Made(gauge).Figures.Any(f => f.What == "wall's foot from the track's middle"))
            {
                double wall = set.Figure(gauge, "wall's foot from the track's middle");
                Assert.Equal(plan.WallFace.At(gauge.Rides.Chainage), wall, 0.03);
                Assert.Equal(wall - air, Farthest(blade, -top + 1.5), Slant);
            }

            // Cut across the track in five places of the blade, gauge and sections keep the air in every cut, and no more than the air in the closest.
            var ride = set.Dossier.Tracks.Single(t => t.Ride.Name == gauge.Rides.Track).Ride;
            var frame = ride.At(ride.Locate(plan.Chart.PointAt(gauge.Rides.Chainage)).Chainage);
            var sections = set.Dossier.Platforms.Single(p => p.Name == gauge.Platform).Sections.Sections;
            double nearest = double.PositiveInfinity;
            foreach (double v in (double[])[-1.49, -0.7, 0.01, 0.7, 1.49])
            {
                var own = Cut(set.Placed(gauge), frame, v).ToArray();
                foreach (var q in sections.SelectMany(s => Cut(s.Solid.Mesh, frame, v)).Where(q => Math.Min(Math.Abs(q.A.X), Math.Abs(q.B.X)) < coping + 20))
                {
                    nearest = own.Min(p => Math.Min(nearest, Apart(p, q)));
                }
            }

            Assert.InRange(nearest, air - 0.02, air + 0.02);
        }
    }

    [Fact]
    public void Every_vehicle_clears_the_coping_that_a_gauge_shows()
    {
        var set = ProofSets.Pendlewick.Value;
        var platform = set.Dossier.Platforms[0];
        foreach (var gauge in set.Of("slide gauge"))
        {
            // The sweep's own stations: nothing that runs there reaches farther than the figure less the budget.
            var need = platform.Plan.Requirement;
            int station = (int)Math.Round((gauge.Rides!.Chainage - need.Stations[0]) / (need.Stations[1] - need.Stations[0]));
            Assert.True(need.Swept[station] + platform.Budget.Margin <= set.Figure(gauge, "coping from the track's middle") + 0.02);
        }
    }

    [Fact]
    public void On_a_curve_a_gauge_made_for_straight_track_would_lie_so_each_has_its_own_figures_and_bears_its_chainage()
    {
        var gauges = ProofSets.Pendlewick.Value.Of("slide gauge").ToArray();
        Assert.True(gauges.Select(g => ProofSets.Pendlewick.Value.Figure(g, "coping from the track's middle")).Max()
            - gauges.Select(g => ProofSets.Pendlewick.Value.Figure(g, "coping from the track's middle")).Min() > 1);
        Assert.All(gauges, g =>
        {
            // Lettering is cut into the upper face: so much less than the blade's full volume, and floors 0.4 mm below it.
            var mesh = ProofSets.Pendlewick.Value.Made(g).Solid.Mesh;
            Assert.Contains(mesh.Vertices, v => Math.Abs(v.Z - 2.6) < 1e-6 && v.Y > 6);
        });
    }

    [Theory]
    [InlineData("gauges.at=[50]", "PF7504", "gauges.at[0]")]
    [InlineData("gauges.air=0.25", "PF7508", "gauges.air")]
    [InlineData("gauges.play=1.2", "PF7509", "gauges.play")]
    [InlineData("gauges.footprint=0.2", "PF7512", "gauges.footprint")]
    [InlineData("gauges.masks=0.2", "PF7512", "gauges.masks")]
    public void What_cannot_be_is_a_finding_with_a_value_that_works(string set, string code, string key)
    {
        var project = Samples.Sound(Samples.Pendlewick, set);
        var made = ProofRun.Of(project, ProofSets.Pendlewick.Value.Dossier);
        Assert.Null(made.Value);
        var finding = Assert.Single(made.Findings, f => f.Code == code);
        Assert.Equal(key, finding.Key);
        var cure = Assert.IsType<PlatformForge.Units.Cure>(finding.Cure);
        var again = Samples.Sound(Samples.Pendlewick, set, $"{cure.Key}={cure.Value}");
        Assert.NotNull(ProofRun.Of(again, ProofSets.Pendlewick.Value.Dossier).Value);
    }

    [Fact]
    public void A_gauge_for_a_track_without_its_gauge_is_a_finding_with_one_that_works()
    {
        string text = Samples.Small.Replace("scale = \"4mm\"", "ratio = 76.2", StringComparison.Ordinal);
        var finding = Assert.Single(Samples.Read(text).Findings, f => f.Key == "layout.gauge");
        Assert.Equal("PF1009", finding.Code);
        Assert.NotNull(Samples.Read(text, $"{finding.Cure!.Key}={finding.Cure.Value}").Value);
    }

    // How far a gauge reaches towards the platform at a height, above the chamfers at its foot.
    private static double Farthest(Mesh mesh, double y)
    {
        double most = double.NegativeInfinity;
        for (int i = 0; i < mesh.Triangles.Length; i++)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[i]], b = mesh.Vertices[mesh.Triangles[i % 3 == 2 ? i - 2 : i + 1]];
            double share = (y - a.Y) / (b.Y - a.Y);
            most = share is >= 0 and <= 1 ? Math.Max(most, a.X + ((b.X - a.X) * share)) : most;
        }

        return most;
    }

    // A mesh cut square to the track, so far along it from a frame: segments of offset and height.
    private static IEnumerable<(Point2 A, Point2 B)> Cut(Mesh mesh, TrackFrame frame, double v)
    {
        var local = Array.ConvertAll(mesh.Vertices, p => new Point3(
            Point2.Dot(new Point2(p.X, p.Y) - frame.Position, frame.Tangent.Left), Point2.Dot(new Point2(p.X, p.Y) - frame.Position, frame.Tangent) - v, p.Z));
        for (int i = 0; i < mesh.Triangles.Length; i += 3)
        {
            var ends = new List<Point2>(2);
            for (int k = 0; k < 3; k++)
            {
                Point3 a = local[mesh.Triangles[i + k]], b = local[mesh.Triangles[i + ((k + 1) % 3)]];
                if (a.Y < 0 != b.Y < 0)
                {
                    var at = a + ((b - a) * (a.Y / (a.Y - b.Y)));
                    ends.Add(new(at.X, at.Z));
                }
            }

            if (ends.Count == 2)
            {
                yield return (ends[0], ends[1]);
            }
        }
    }

    // Distance of two segments in a plane: nil where they cross.
    private static double Apart((Point2 A, Point2 B) p, (Point2 A, Point2 B) q)
    {
        double Side((Point2 A, Point2 B) s, Point2 x) => Point2.Cross(s.B - s.A, x - s.A);
        return Side(p, q.A) * Side(p, q.B) < 0 && Side(q, p.A) * Side(q, p.B) < 0 ? 0
            : Math.Min(Math.Min(To(p.A, q), To(p.B, q)), Math.Min(To(q.A, p), To(q.B, p)));

        static double To(Point2 x, (Point2 A, Point2 B) s)
        {
            var along = s.B - s.A;
            double share = Math.Clamp(Point2.Dot(x - s.A, along) / Math.Max(1e-12, Point2.Dot(along, along)), 0, 1);
            return (x - s.A - (along * share)).Length;
        }
    }

    // The lowest place of a mesh's faces over a strip between two offsets, near a chainage: upright lines at places a quarter of a millimetre apart.
    private static double Lowest(Mesh mesh, Centreline ride, double near, double u0, double u1)
    {
        double lowest = double.PositiveInfinity;
        double s0 = ride.Locate(new(mesh.Vertices.Average(v => v.X), mesh.Vertices.Average(v => v.Y)), near).Chainage;
        for (double s = s0 - 8; s <= s0 + 8; s += 0.5)
        {
            for (int k = 0; k <= 4; k++)
            {
                var p = ride.PointAt(s, u0 + ((u1 - u0) * k / 4));
                for (int i = 0; i < mesh.Triangles.Length; i += 3)
                {
                    Point3 a = mesh.Vertices[mesh.Triangles[i]], b = mesh.Vertices[mesh.Triangles[i + 1]], c = mesh.Vertices[mesh.Triangles[i + 2]];
                    double area = Cross(b, c, a), u = Cross(b, c, new(p.X, p.Y, 0)) / area, v = Cross(c, a, new(p.X, p.Y, 0)) / area;
                    lowest = u >= 0 && v >= 0 && u + v <= 1 ? Math.Min(lowest, (u * a.Z) + (v * b.Z) + ((1 - u - v) * c.Z)) : lowest;
                }
            }
        }

        return lowest;

        static double Cross(Point3 p, Point3 q, Point3 r) => ((p.X - r.X) * (q.Y - r.Y)) - ((p.Y - r.Y) * (q.X - r.X));
    }
}
