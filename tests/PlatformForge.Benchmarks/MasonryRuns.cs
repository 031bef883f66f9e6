using System.Diagnostics;
using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Exports.Stl;
using PlatformForge.Masonry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Features.Kinds;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies;
using PlatformForge.Solids.Bodies.Walls;
using PlatformForge.Solids.Kernel;
using PlatformForge.Solids.Reliefs;
using PlatformForge.Tests.Meshes;
using PlatformForge.Track;
using PlatformForge.Units;
using PlatformForge.Units.Memories;

namespace PlatformForge.Benchmarks;

/// <summary>A faced section of the size of the reference section, raised by the product's own blocks: what its bricks cost.</summary>
internal static class MasonryRuns
{
    public static void Report()
    {
        Console.WriteLine("section 310 mm on R 676           median ms   least ms  triangles  regions  volume      sound");
        foreach (var (name, facing) in new (string, FacingSpec?)[]
        {
            ("plain", null),
            ("front in English bond", Front(Bond.English)),
            ("front in Flemish bond", Front(Bond.Flemish)),
            ("front in stretcher bond", Front(Bond.Stretcher)),
            ("all round in English bond", FacingSpec.For(Scale)),
            ("all round in coursed stone", FacingSpec.For(Scale) with { Front = WallFinish.Stone }),
            ("all round in random rubble", FacingSpec.For(Scale) with { Front = WallFinish.Rubble }),
        })
        {
            var plan = Plan(facing);
            var blocks = PlatformBody.Blocks(plan).All;
            var printed = PrintedFacing.Of(plan, Printer, new());
            FacingRelief? relief = null;
            Solid Raise()
            {
                relief = printed is null ? null : new(printed.Finishes[0].Work, printed.Returns);
                return SolidRaiser.Raise(blocks, printed?.Finishes[0].Walls.ToDictionary(w => w, _ => (IWallRelief)relief!));
            }

            var timing = Timing.Of(() => Raise(), 100);
            var solid = Raise();
            Console.WriteLine(
                $"{name,-32} {timing.Median,10:F2} {timing.Least,10:F2} {solid.Mesh.TriangleCount,10} {relief?.Walls.Sum(w => w.Regions.Count) ?? 0,8} "
                + $"{solid.ColumnVolume,11:F2} {MeshCheck.Inspect(solid.Mesh).IsSound}");
            var bytes = Timing.Of(() => StlWriter.ToBytes(Raise().Mesh, "benchmark", threads: 1), 50);
            Console.WriteLine($"  with bytes                     {bytes.Median,10:F2} {bytes.Least,10:F2}");
            if (relief is not null)
            {
                var pattern = Timing.Of(() => { _ = relief.Walls.Sum(w => printed!.Finishes[0].Work.On(w.Wall).Regions().Count()); }, 100);
                Console.WriteLine($"  the pattern alone              {pattern.Median,10:F2} {pattern.Least,10:F2}");
            }
        }
    }

    /// <summary>Platforms of three, five and ten metres, streamed section by section.</summary>
    public static void Long()
    {
        var printer = PrinterSpec.Oblong(340, 340, 250);
        foreach (double metres in new[] { 3.0, 5, 10 })
        {
            var plan = Straight(metres * 1000, FacingSpec.For(Scale));
            long bytes = 0;
            double before = Process.GetCurrentProcess().TotalProcessorTime.TotalMilliseconds;
            var clock = Stopwatch.StartNew();
            var pieces = SectionMaker.Shapes(plan, printer, new()).Value!;
            double shaped = clock.Elapsed.TotalMilliseconds;
            foreach (var piece in pieces)
            {
                bytes += StlWriter.ToBytes(piece.Solid.Mesh, "benchmark", threads: 1).LongLength;
            }

            double cpu = Process.GetCurrentProcess().TotalProcessorTime.TotalMilliseconds - before;
            Console.WriteLine(
                $"{metres} m, both faces: {pieces.Count} sections, {pieces.Sum(p => p.Solid.Mesh.TriangleCount)} triangles; shaped {shaped:F0} ms, with "
                    + $"bytes {clock.Elapsed.TotalMilliseconds:F0}, of processor {cpu:F0}; {bytes / 1e6:F0} MB of files; "
                    + $"peak {Process.GetCurrentProcess().PeakWorkingSet64 / 1048576} MB");
        }
    }

    /// <summary>Ten sections of 300 mm with a front in English bond, with bytes, and a metre of brick all round whose line's width is changed (planned anew,
    /// swept once).</summary>
    public static void Spread(int repeats)
    {
        var printer = PrinterSpec.Oblong(340, 340, 250);
        var ten = Straight(3000, FacingSpec.For(Scale) with { Back = WallFinish.Plain, Ends = WallFinish.Plain });
        SpreadRuns.Report("ten sections with bytes", () =>
        {
            var pieces = SectionMaker.Shapes(ten, printer, new()).Value!;
            Parallel.For(0, pieces.Count, i => StlWriter.ToBytes(pieces[i].Solid.Mesh, "benchmark", threads: 1));
        }, repeats);
        var memory = new Memory();
        double width = 1;
        SpreadRuns.Report("a changed value on a metre", () =>
        {
            width += 0.001;
            _ = SectionMaker.Shapes(Straight(1000, FacingSpec.For(Scale), width), printer, new(), memory);
        }, repeats);
    }

    /// <summary>What a value never seen before costs on a metre of brick all round, and what is made anew for it: pieces alone, and with their
    /// account.</summary>
    public static void Edits(int repeats, string part)
    {
        var printer = PrinterSpec.Oblong(340, 340, 250);
        var (bare, facing) = (Straight(1000, FacingSpec.For(Scale)).Spec, FacingSpec.For(Scale));
        (string What, Func<double, (PlatformSpec Platform, PrinterSpec Printer, SectionSpec Sections)> Edit)[] edits =
        [
            ("nothing", _ => (bare, printer, new())),
            ("line's width", x => (bare with { WhiteLine = new() { Width = 1 + x } }, printer, new())),
            ("deck's thickness", x => (bare with { Deck = bare.Deck with { Thickness = 2 + x } }, printer, new())),
            ("ramp's length", x => (bare with { EndRamp = new(Length: 100 + x) }, printer, new())),
            ("socket's place", x => (bare with { Features = [new LampSpec(700 + x, 10)] }, printer, new())),
            ("width of the joints", x => (bare with { Facing = facing with { Joint = facing.Joint + (x / 100) } }, printer, new())),
            ("depth of the joints", x => (bare with { Facing = facing with { Depth = facing.Depth + (x / 100) } }, printer, new())),
            ("name", x => (bare with { Name = $"b{(int)(x * 900) + 100}" }, printer, new())),
            ("layer", x => (bare, printer with { Layer = 0.15 + (x / 100) }, new())),
            ("nozzle", x => (bare, printer with { Nozzle = 0.4 + (x / 100) }, new())),
            ("speed", x => (bare, printer with { Speeds = new() { Wall = 100 + x } }, new())),
            ("dowel's length", x => (bare, printer, new() { Joint = new() { DowelLength = 20 + x } })),
            ("depth of engraving", x => (bare, printer, new() { EngravingDepth = 0.5 + (x / 100) })),
        ];
        foreach (var (what, edit) in edits.Where(e => e.What.Contains(part, StringComparison.Ordinal)))
        {
            var (shapes, accounts) = (new Memory(), new Memory());
            double x = 0;
            (PlatformPlan, PrinterSpec, SectionSpec) Next()
            {
                x += 0.003;
                var (platform, by, sections) = edit(x);
                return (Planned(1000, platform), by, sections);
            }

            void Row(string of, Memory memory, Action work)
            {
                var timing = Timing.Of(work, repeats);
                var asked = memory.Counts;
                long before = GC.GetTotalAllocatedBytes(true);
                int young = GC.CollectionCount(0);
                work();
                double megabytes = (GC.GetTotalAllocatedBytes(true) - before) / 1e6;
                var made = memory.Counts.Select(c => (c.Key, Made: c.Value.Made - asked.GetValueOrDefault(c.Key).Made)).Where(c => c.Made > 0);
                Console.Write(
                    $"{what,-24}{of,-13}{timing.Median,8:F1}{timing.Least,8:F1}{timing.Processor,8:F1}{megabytes,8:F1}{GC.CollectionCount(0) - young,4}  ");
                Console.WriteLine(string.Join(", ", made.Select(c => $"{c.Key} {c.Made}")));
            }

            T Known<T>(T? product)
                where T : class => product ?? throw new InvalidOperationException(what);

            Row("pieces", shapes, () =>
            {
                var (plan, by, s) = Next();
                Known(SectionMaker.Shapes(plan, by, s, shapes).Value);
            });
            Row("with account", accounts, () =>
            {
                var (plan, by, s) = Next();
                Known(SectionMaker.Make(plan, by, s, accounts).Value);
            });
        }
    }

    private static readonly Dictionary<double, (Centreline Track, SweptEnvelope Envelope)> Swept = [];

    private static PlatformPlan Straight(double length, FacingSpec facing, double line = 1)
    {
        if (!Swept.TryGetValue(length, out var swept))
        {
            var track = TrackLayer.Lay(new("up", new(0, 0), 0, [new StraightSpec(length + 800)])).Value!;
            var coach = new Vehicle("coach", 186, 0, 0, [VehiclePart.Box("body", PartCarrier.Body, -130, 130, 34, 13, 50)]);
            swept = Swept[length] = (track, EnvelopeSweeper.Sweep(new(track, 400, 400 + length, [new TrackRun(track, [coach])])).Value!);
        }

        return Planned(length, PlatformSpec.For(Scale, "benchmark", new FaceSpec("up", Side.Right, 400, 400 + length, EdgeStyle.Uniform)) with
        {
            Deck = new() { Width = 40 },
            Facing = facing,
            WhiteLine = new() { Width = line },
        });
    }

    private static PlatformPlan Planned(double length, PlatformSpec spec)
    {
        var swept = Swept[length];
        var planned = PlatformPlanner.Plan(new(spec, new(Scale, 8), swept.Track, swept.Envelope, ClearanceBudget.Of(running: 1)));
        return planned.Value ?? throw new InvalidOperationException(string.Join("; ", planned.Findings.Select(f => f.Message)));
    }

    private static ModelScale Scale { get; } = new(76.2);

    private static PrinterSpec Printer { get; } = PrinterSpec.Oblong(400, 400, 250);

    private static FacingSpec Front(Bond bond) => FacingSpec.For(Scale) with { Bond = bond, Back = WallFinish.Plain, Ends = WallFinish.Plain };

    private static PlatformPlan Plan(FacingSpec? facing)
    {
        var track = TrackLayer.Lay(new("up", new(0, 0), 0, [new StraightSpec(400), new CurveSpec(676, Hand.Left, Length: 310),
            new StraightSpec(400)])).Value!;
        var coach = new Vehicle("coach", 186, 0, 0, [VehiclePart.Box("body", PartCarrier.Body, -130, 130, 34, 13, 50)]);
        var spec = PlatformSpec.For(Scale, "benchmark", new FaceSpec("up", Side.Right, 400, 710, EdgeStyle.Fitted)) with
        {
            Deck = new() { Width = 40 },
            EndRamp = new(Gradient: 10),
            Facing = facing,
        };
        var sweep = EnvelopeSweeper.Sweep(new(track, spec.Face.From, spec.Face.To, [new TrackRun(track, [coach])])).Value!;
        var planned = PlatformPlanner.Plan(new(spec, new(Scale, 8), track, sweep, ClearanceBudget.Of(running: 1)));
        return planned.Value ?? throw new InvalidOperationException(string.Join("; ", planned.Findings.Select(f => f.Message)));
    }
}
