using System.Collections.Concurrent;
using PlatformForge.Geometry;
using static PlatformForge.Outside.Tests.WrittenFace;

namespace PlatformForge.Outside.Tests;

/// <summary>
/// Tables for laying, held against the printed solids: each figure is measured anew in the triangles of the STL files where the manifest's motions lay them,
/// square to the track that the design copy tells, and gaps to vehicles that are run along that track here. Nothing of the program's geometry is asked.
/// </summary>
[Collection("samples")]
public class TablesOfSolidsTests(WrittenSamples samples)
{
    // mm: half of a table's last digit and the 0.01 that a facet may lie off its curve (decision 0002); all faces of the samples keep 0.0135.
    private const double Near = 0.005 + 0.01 + 0.0005;

    // A straight edge laid on two places of two facets, carried on by as much as they are apart.
    private const double AtEnds = Near + 0.005;

    // Heights: half of the last digit, and 32-bit figures.
    private const double High = 0.0055;

    // A place on the layout: both its figures rounded, its chainage too, and a facet.
    private const double Placed = 0.025;

    // Tables of gaps have three digits: what is left is the facet, and a sill between the poses and stations at which the program tries it (4 and 5 mm: 5² /
    // 8R, 0.004 on 760 mm).
    private const double Gap = 0.0005 + 0.01 + 0.004;

    // Swept reaches are never less than true, and more by 0.01 at most (docs/limits.md); the sweep here misses 0.001.
    private const double SweptMore = 0.0105, SweptLess = 0.001;

    private static readonly ConcurrentDictionary<string, IReadOnlyList<(WrittenFace, FaceMeasures)>> Known = [];

    [Fact]
    public void Edges_feet_backs_and_heights_are_where_the_setting_out_says()
    {
        int looked = 0, cuts = 0, off = 0;
        foreach (var (face, found) in Faces())
        {
            // a rail's head 2 3/4 in wide (from memory)
            double gauge = face.Design.Number("gauge"), railTop = face.Design.Number("rail_top"), head = 70 / face.Design.Number("ratio");
            foreach (var row in face.Table("setting-out"))
            {
                double s = Number(row, "chainage_mm");
                string where = $"{face.Built} {face.Name} at {s}";
                var sections = found.At(s);
                Assert.InRange(sections.Count, 1, 2);
                Assert.Contains(sections, f => row["section"] == $"{f.Section}");
                foreach (var f in sections)
                {
                    double near = sections.Count == 2 || row["note"] is "start" or "end" ? AtEnds : Near;
                    Close(f.Edge, row, "coping_edge_from_track_middle_mm", near, where);
                    Close(f.Edge - (gauge / 2), row, "coping_edge_from_running_edge_mm", near, where);
                    Close(f.Edge - (gauge / 2) - head, row, "coping_edge_from_rail_outer_face_mm", near, where);
                    Close(f.Foot - (gauge / 2) - head, row, "wall_foot_from_rail_outer_face_mm", near, where);
                    Close(f.Top, row, "coping_top_over_baseboard_mm", High, where);
                    Close(f.Top - railTop, row, "coping_top_over_rail_mm", High, where);
                    At(face.OnLayout(s, f.Edge), row, "coping_edge", where);
                    At(face.OnLayout(s, f.Foot), row, "wall_foot", where);
                }

                var backs = found.Backs(s);
                Assert.True(row["back_edge_from_rail_outer_face_mm"].Length > 0 == backs.Count > 0, $"{where}: {backs.Count} backs are square across");
                foreach (double back in backs)
                {
                    Close(back - (gauge / 2) - head, row, "back_edge_from_rail_outer_face_mm", AtEnds, where);
                    At(face.OnLayout(s, back), row, "back_edge", where);
                }

                (looked, cuts, off) = (looked + 1, cuts + (sections.Count == 2 ? 1 : 0), off + (backs.Count == 0 ? 1 : 0));
            }
        }

        Assert.True(looked > 600 && cuts > 20 && off > 5, $"{looked} {cuts} {off}");
    }

    [Fact]
    public void Chords_are_as_long_between_places_on_the_prints()
    {
        // Two places, each a facet off at most where a chord runs across them.
        const double near = 0.005 + (2 * 0.0135);
        int looked = 0, edges = 0;
        foreach (var (face, found) in Faces())
        {
            var other = Faces().FirstOrDefault(f => f.Face.Built == face.Built && f.Face.Platform == face.Platform && f.Face.Name != face.Name);
            (Point2? Foot, Point2 Edge, Point2? Back) Mark(double s) => found.At(s)[0] is var f && face.OnLayout(s, f.Edge) is var edge && other.Face is null
                ? (face.OnLayout(s, f.Foot), edge, face.OnLayout(s, found.Backs(s)[0])) : found.EndAt(face, s) is { } end
                ? (end.Foot, edge, FarEdge(end, other.Face!, other.Found)) : (null, edge, null);
            var rows = face.Table("chords");
            var start = Mark(Number(rows[0], "from_chainage_mm"));
            foreach (var row in rows)
            {
                var (a, b) = (Mark(Number(row, "from_chainage_mm")), Mark(Number(row, "to_chainage_mm")));
                string where = $"{face.Built} {face.Name}, {row["from"]} to {row["to"]}";
                Close((b.Edge - a.Edge).Length, row, "along_coping_edge_mm", near, where);
                edges++;
                // On an island the lines across of what stands between its cuts are the program's own: only its edge is felt there.
                if (a is { Foot: { } foot, Back: { } back } && b is { Foot: { } foot2, Back: { } back2 })
                {
                    Close((foot2 - foot).Length, row, "along_wall_foot_mm", near, where);
                    Close((back2 - back).Length, row, "along_back_edge_mm", near, where);
                    Close((back2 - foot).Length, row, "foot_to_next_back_mm", near, where);
                    Close((foot2 - back).Length, row, "back_to_next_foot_mm", near, where);
                    Close((back - foot).Length, row, "across_foot_to_back_mm", near, where);
                    Close((back2 - foot2).Length, row, "next_across_foot_to_back_mm", near, where);
                    Close((foot2 - start.Foot!.Value).Length, row, "from_start_along_wall_foot_mm", near, where);
                    Close((back2 - start.Back!.Value).Length, row, "from_start_along_back_edge_mm", near, where);
                    looked++;
                }
            }
        }

        Assert.True(looked > 60 && edges > looked, $"{looked} {edges}");
    }

    [Fact]
    public void Gaps_are_between_the_printed_edge_and_vehicles_run_past_it()
    {
        int looked = 0, doors = 0;
        foreach (var (face, found) in Faces())
        {
            var rows = face.Table("gaps");
            var (stations, reach) = Swept(face, [.. rows.Select(r => Number(r, "chainage_mm"))]);
            // What a survey leaves in doubt is swept with the vehicles, and decides with them who governs.
            bool isSurveyed = rows[0].ContainsKey("survey residual mm"), hasPlay = rows[0].ContainsKey("wheelset play mm");
            for (int i = 0; i < rows.Count; i++)
            {
                var (row, s, edge) = (rows[i], stations[i], found.At(stations[i])[0].Edge);
                string where = $"{face.Built} {face.Name} at {s}";
                double bare = reach.Where(r => r.Part != "sill").Max(r => r.Most[i]), told = Number(row, "bare_reach_mm");
                Assert.True(told - bare is > -SweptLess and < SweptMore, $"{where}: bare reach {told} told, {bare:0.0000} found");
                Close(edge, row, "coping_reach_mm", Gap, where);
                Close(edge - Number(row, "required_reach_mm"), row, "spare_mm", Gap, where);
                // Each allowance is rounded.
                string[] allowances = [.. row.Keys.Where(k => k.EndsWith(" mm", StringComparison.Ordinal))];
                Close(told + allowances.Sum(k => Number(row, k)), row, "required_reach_mm", 0.0005 * (allowances.Length + 2), where);
                if (!isSurveyed && !hasPlay)
                {
                    double governs = reach.Where(r => r.Vehicle == row["governing_vehicle"] && r.Part == row["governing_part"]
                        && r.Track == row["governing_track"]).Max(r => r.Most[i]);
                    Assert.True(governs > bare - 0.002, $"{where}: {row["governing_vehicle"]} reaches {governs:0.0000}, another {bare:0.0000}");
                }

                foreach (var r in reach.Where(r => r.Part == "sill" && r.Track == face.Face.Text("track")))
                {
                    Close(edge - r.Most[i], row, $"{r.Vehicle} nearest_gap_mm", Gap, where);
                    Close(edge - r.Least[i], row, $"{r.Vehicle} farthest_gap_mm", Gap, where);
                    doors++;
                }

                looked++;
            }
        }

        Assert.True(looked > 2000 && doors > 4000, $"{looked} {doors}");
    }

    /// <summary>For each style the table tells where its edge would run: where it was built so it runs there, and leaves those gaps.</summary>
    [Fact]
    public void What_another_style_would_leave_is_what_it_leaves_when_it_is_built()
    {
        string folder = Directory.CreateTempSubdirectory("platformforge-styles-").FullName;
        try
        {
            string[] styles = ["fitted", "faired", "uniform"];
            Parallel.ForEach(styles, style =>
            {
                var said = WrittenSamples.CommandLine("build", WrittenSamples.SampleFile("sandhope"), "--output", Path.Combine(folder, style), "--set",
                    $"platform[0].face.edge={style}", "--sets", "prints,tables", "--quiet");
                Assert.True(said.Exit == 0, said.All);
            });
            int looked = 0;
            foreach (string built in styles)
            {
                var (face, found) = Measured(Path.Combine(folder, built)).Single();
                double ratio = face.Design.Number("ratio");
                var (_, reach) = Swept(face, [.. face.Table("gaps-by-style").Select(r => Number(r, "chainage_mm"))]);
                foreach (string told in styles)
                {
                    var rows = Csv(Path.Combine(folder, told, "tables", $"{face.Name}-gaps-by-style.csv"));
                    Assert.True(rows.Count > 50);
                    for (int i = 0; i < rows.Count; i++)
                    {
                        ByStyle(rows[i], built, found.At(Number(rows[i], "chainage_mm"))[0].Edge, i, reach, ratio,
                            $"{told} tells of {built} at {rows[i]["chainage_mm"]}");
                        looked++;
                    }
                }
            }

            Assert.True(looked > 450, $"{looked}");
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void What_the_style_that_was_chosen_leaves_is_what_was_printed()
    {
        int looked = 0;
        foreach (var (face, found) in Faces())
        {
            var rows = face.Table("gaps-by-style");
            var (stations, reach) = Swept(face, [.. rows.Select(r => Number(r, "chainage_mm"))]);
            string chosen = new[] { "fitted", "faired", "uniform" }.MinBy(style =>
                rows.Select((r, i) => Math.Abs(Number(r, $"{style} coping_reach_mm") - found.At(stations[i])[0].Edge)).Max())!;
            for (int i = 0; i < rows.Count; i++)
            {
                string where = $"{face.Built} {face.Name} at {stations[i]}";
                double bare = reach.Where(r => r.Part != "sill").Max(r => r.Most[i]), told = Number(rows[i], "bare_reach_mm");
                Assert.True(told - bare is > -SweptLess and < SweptMore, $"{where}: bare reach {told} told, {bare:0.0000} found");
                ByStyle(rows[i], chosen, found.At(stations[i])[0].Edge, i, [.. reach.Where(r => r.Track == face.Face.Text("track"))],
                    face.Design.Number("ratio"), where);
                looked++;
            }
        }

        Assert.True(looked > 500, $"{looked}");
    }

    private static void ByStyle(Dictionary<string, string> row, string style, double edge, int i,
        (string Track, string Vehicle, string Part, double[] Most, double[] Least)[] reach, double ratio, string where)
    {
        const double inch = 25.4;
        Close(edge, row, $"{style} coping_reach_mm", Gap, where);
        foreach (var r in reach.Where(r => r.Part == "sill"))
        {
            Close(edge - r.Most[i], row, $"{style} {r.Vehicle} nearest_gap_mm", Gap, where);
            Close(edge - r.Least[i], row, $"{style} {r.Vehicle} farthest_gap_mm", Gap, where);
            Close((edge - r.Least[i]) * ratio, row, $"{style} {r.Vehicle} farthest_gap_full_size_mm", 0.5 + (Gap * ratio), where);
            Close((edge - r.Least[i]) * ratio / inch, row, $"{style} {r.Vehicle} farthest_gap_full_size_in", 0.05 + (Gap * ratio / inch), where);
        }
    }

    [Fact]
    public void Posts_of_a_fence_stand_where_the_decks_have_their_holes()
    {
        int looked = 0;
        foreach (var (face, _) in Faces().Where(f => File.Exists(Path.Combine(f.Face.Built, "tables", $"{f.Face.Stem}-fence.csv"))))
        {
            var rows = Csv(Path.Combine(face.Built, "tables", $"{face.Stem}-fence.csv"));
            // Seen from the bed, below mouths and above the deck's underside: round is what has ten corners or more.
            var holes = WrittenSolid.Of(face.Built).Where(s => s.Platform == face.Platform)
                .SelectMany(s => s.Cut(new(0, 0, 0.7), new(1, 0, 0), new(0, 1, 0)).Where(l => Plane.Area(l) < 0 && l.Length >= 10)
                    .Select(l => (At: s.ToLayout(Plane.Middle(l) is var m ? new(m.X, m.Y, 0.7) : default), Area: -Plane.Area(l)))).ToArray();
            // Panels are asked for as the sample's own file has them; a gate is as wide as its gap.
            var pitch = System.Text.RegularExpressions.Regex.Match(File.ReadAllText(WrittenSamples.SampleFile(Path.GetFileName(face.Built))),
                @"\[platform\.fence\]\s+pitch = (\d+)");
            Assert.All(rows.Where(r => r["next"] == "panel" && pitch.Success),
                r => Assert.Equal(double.Parse(pitch.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture), Number(r, "next_asked_mm")));
            Point2? before = null;
            double along = 0, told = double.NaN;
            foreach (var row in rows)
            {
                string where = $"{face.Built} post {row["post"]}";
                Point2 at = new(Number(row, "layout_x_mm"), Number(row, "layout_y_mm"));
                var hole = holes.MinBy(h => (new Point2(h.At.X, h.At.Y) - at).Length);
                Point2 middle = new(hole.At.X, hole.At.Y);
                Assert.True((middle - at).Length < 0.03, $"{where}: told {(middle - at).Length:0.000} mm beside its hole");
                var (chainage, left) = face.Chart.Locate(at, Number(row, "chainage_mm"));
                Close(chainage, row, "chainage_mm", 0.0025, where);
                Close(face.Side * left, row, "reach_from_track_middle_mm", 0.0025, where);
                // Twelve sides round a circle: n r² tan(π/n); what is asked of the post is less than its hole.
                Close(2 * Math.Sqrt(hole.Area / (12 * Math.Tan(Math.PI / 12))), row, "hole_mm", 0.03, where);
                Assert.True(Number(row, "pin_mm") < Number(row, "hole_mm"));
                if (before is { } last)
                {
                    Assert.Equal(told, (middle - last).Length, 0.03);
                    along += (middle - last).Length;
                }

                Assert.Equal(Number(row, "along_fence_mm"), along, 0.06);
                (before, told) = (middle, row["next_length_mm"].Length > 0 ? Number(row, "next_length_mm") : double.NaN);
                looked++;
            }
        }

        Assert.True(looked > 60, $"{looked}");
    }

    /// <summary>Faces of all samples with what was measured on them, at every place that a table tells of.</summary>
    private IEnumerable<(WrittenFace Face, FaceMeasures Found)> Faces() =>
        samples.Names.SelectMany(name => Known.GetOrAdd(Path.Combine(samples.Folder, name), Measured));

    private static IReadOnlyList<(WrittenFace, FaceMeasures)> Measured(string built) => [.. WrittenFace.Of(built).Select(face => (face, new FaceMeasures(face,
    [
        .. face.Table("setting-out").Select(r => Number(r, "chainage_mm")), .. face.Table("gaps").Select(r => Number(r, "chainage_mm")),
        .. face.Table("gaps-by-style").Select(r => Number(r, "chainage_mm")),
    ])))];

    /// <summary>Reach of every part that runs before a face, at stations; those of a track behind the platform are its back's.</summary>
    private static (double[] Stations, (string Track, string Vehicle, string Part, double[] Most, double[] Least)[] Reach) Swept(WrittenFace face,
        double[] stations) => (stations,
    [
        .. face.Design.GetProperty("tracks").EnumerateArray().SelectMany(t =>
        {
            var ride = new OwnTrack(t.GetProperty("elements"));
            bool isOwn = t.Text("name") == face.Face.Text("track");
            bool[] isBefore = [.. stations.Select(s => isOwn || IsBefore(face, ride, s))];
            double[] Kept(double[] values) => [.. values.Select((v, i) => isBefore[i] ? v : double.NaN)];
            return OwnSweep.Of(t.GetProperty("vehicles"), ride, face.Chart, face.Side, stations)
                .Select(r => (t.Text("name"), r.Vehicle, r.Part, Kept(r.Most), Kept(r.Least)));
        }),
    ]);

    // Behind: farther out than any edge of the samples.
    private static bool IsBefore(WrittenFace face, OwnTrack ride, double s) => face.OnLayout(s, 30) is var at
        && Point2.Dot(at - ride.At(ride.Locate(at).Chainage).Place, at - face.Chart.At(s).Place) > 0;

    // Where a cut's line meets the other face's coping edge: past the far wall by what the coping overhangs.
    private static Point2 FarEdge((Point2 Foot, Point2 Far) end, WrittenFace other, FaceMeasures found)
    {
        var along = (end.Far - end.Foot) * (1 / (end.Far - end.Foot).Length);
        double mark = other.Table("chords").SelectMany(r => new[] { Number(r, "from_chainage_mm"), Number(r, "to_chainage_mm") })
            .MinBy(s => Math.Abs(s - other.Chart.Locate(end.Far).Chainage));
        double edge = found.At(mark)[0].Edge, over = 0;
        for (int i = 0; i < 20; i++)
        {
            over += (other.Side * other.Chart.Locate(end.Far + (along * over)).Left) - edge;
        }

        return end.Far + (along * over);
    }

    private static void Close(double measured, Dictionary<string, string> row, string column, double within, string where) =>
        Assert.True(Math.Abs(measured - Number(row, column)) <= within, $"{where}: {column} {row[column]} told, {measured:0.0000} measured");

    private static void At(Point2 measured, Dictionary<string, string> row, string what, string where)
    {
        double off = (measured - new Point2(Number(row, what + "_x_mm"), Number(row, what + "_y_mm"))).Length;
        Assert.True(off < Placed, $"{where}: {what} is told {off:0.000} mm off where it is");
    }
}
