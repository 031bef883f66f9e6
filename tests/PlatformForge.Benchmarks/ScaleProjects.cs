using System.Text;
using static System.FormattableString;

namespace PlatformForge.Benchmarks;

/// <summary>
/// Projects that grow in one thing at a time: length of a platform on 30 m of track with eight vehicles, gaps of a fence, boards, and platforms. Each is to be
/// run with
/// <c>/usr/bin/time -v</c>, since the memory of one process is asked for; time and memory have to grow with the thing and no faster.
/// </summary>
internal static class ScaleProjects
{
    private const string Track = """
        { straight = 10000 },
        { transition = 600, to_radius = 3000, hand = "left" }, { curve = 3000, length = 4000, hand = "left" },
        { transition = 600, to_radius = 5000, hand = "left" }, { curve = 5000, length = 14800, hand = "left" }
        """;

    private const int Stock = 8, Few = 2;
    private const int GapPitch = 20, BoardPitch = 11, PlatformPitch = 290, PlatformLength = 250;

    /// <summary>Writes them all into a folder.</summary>
    public static void Write(string folder)
    {
        Directory.CreateDirectory(folder);
        void Save(string name, string text) => File.WriteAllText(Path.Combine(folder, name + ".toml"), text);
        foreach (int length in (int[])[1250, 2500, 5000, 10000])
        {
            Save(Invariant($"length-{length}"), Project(Stock, Long(length, "")));
        }

        // Slabs of 12 mm come by threes into step with gaps 20 mm apart: with a number of gaps that leaves another rest their joints drift along the posts, and
        // for metres there is no place for a cut.
        foreach (int count in (int[])[250, 502, 1000])
        {
            Save(Invariant($"gaps-{count}"),
                Project(Few, Long(400 + (count * GapPitch), "[platform.fence]\npitch = 8\ninset = 2.5\n"
                    + Many(count, i => Invariant($"[[platform.fence.gap]]\nfrom = {8200 + (i * GapPitch)}\nto = {8204 + (i * GapPitch)}\n")))));
        }

        foreach (int count in (int[])[225, 450, 900])
        {
            Save(Invariant($"boards-{count}"),
                Project(Few,
                    Long(300 + (count * BoardPitch), Many(count, i => Invariant($"[[platform.board]]\nname = \"b{i}\"\nat = {8150 + (i * BoardPitch)}\ninset ")
                        + "= 12\nalong = 1.2\nacross = 2.4\ndepth = 4\n"))));
        }

        foreach (int count in (int[])[25, 50, 100, 200])
        {
            Save(Invariant($"platforms-{count}"), Project(Few, Many(count, Short)));
        }
    }

    private static string Many(int count, Func<int, string> one)
    {
        var text = new StringBuilder();
        for (int i = 0; i < count; i++)
        {
            text.Append(one(i));
        }

        return text.ToString();
    }

    private static string Project(int vehicles, string platforms) => $$"""
        layout = { name = "Big", scale = "4mm", rail_top = 8 }
        clearance = { running = 0.7, print = 0.2, fitting = 0.2 }
        sections = { cut_clearance = 0.5 }
        printer = { bed = [220, 220], height = 250, nozzle = 0.4, margin = 8 }

        [[track]]
        name = "up"
        start = { x = 0, y = 0, heading = 0 }
        alignment = [{{Track}}]

        {{Many(vehicles, Vehicle)}}
        {{platforms}}
        """;

    private static string Vehicle(int i) => Invariant($$"""
        [[vehicle]]
        name = "v{{i}}"
        length = {{200 + (8 * i)}}
        pivots = {{140 + (6 * i)}}
        width = {{32 + (0.3 * i)}}
        low = 3
        sill = { height = 13 }

        """);

    private static string Long(double length, string furniture) => Invariant($$"""
        [[platform]]
        name = "up side"
        height = 12
        face = { track = "up", side = "right", from = 8000, to = {{8000 + length}}, edge = "fitted" }
        ramps = { start = { gradient = 8 }, end = { gradient = 8 } }
        deck = { thickness = 1.6, width = 62, crossfall = 80 }
        coping = { width = 8, slab_length = 12, overhang = 1 }
        ribs = { pitch = 30 }
        line = { width = 1 }
        {{furniture}}
        """);

    private static string Short(int i)
    {
        int from = 300 + (i / 2 * PlatformPitch);
        return Invariant($$"""
            [[platform]]
            name = "p{{i}}"
            height = 12
            face = { track = "up", side = "{{(i % 2 == 0 ? "left" : "right")}}", from = {{from}}, to = {{from + PlatformLength}}, edge = "fitted" }
            ramps = { start = { gradient = 8 }, end = { gradient = 8 } }
            deck = { thickness = 1.6, width = 40 }

            """);
    }
}
