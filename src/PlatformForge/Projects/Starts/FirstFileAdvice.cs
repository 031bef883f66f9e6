using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Schemas;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Projects.Starts;

/// <summary>Which option keeps a first file from being sound, and what in its place would do: the nearest that was found by trying.</summary>
internal static class FirstFileAdvice
{
    // Curves are made gentler and beds larger by this at a step until they do, and by how many steps at most.
    private const double Step = 1.25;
    private const int Steps = 24;

    // Largest side of a bed, mm, that is offered.
    private const double LargestBed = 1000;

    public static Finding Of(ShortFileChoice choice, Finding fault, CancellationToken cancel)
    {
        bool Works(ShortFileChoice other) => FirstFile.Tried(other, cancel).Text is not null;
        var (option, said, remedy) = ByTrack(choice, Works) ?? ByBed(choice, Works) ?? ByVehicle(choice, Works) ?? ByTwo(choice, Works)
            ?? ByScale(choice, Works)
            ?? ("--scale", choice.Scale.Name, "See: platformforge presets scales");
        string why = fault.Code == "PF1008" ? Invariant($"{fault.Key}: {fault.Message} {fault.Remedy}") : fault.Message;
        return Finding.Error("PF1088", "", Invariant($"{said} makes no sound platform: {why}"), remedy) with { File = option };
    }

    private static (string, string, string)? ByTrack(ShortFileChoice choice, Func<ShortFileChoice, bool> works) =>
        Gentler(choice, works) is { } track ? ("--track", Quoted(choice.Track), Invariant($"--track {Quoted(track)} works.")) : null;

    private static (string, string, string)? ByBed(ShortFileChoice choice, Func<ShortFileChoice, bool> works) =>
        choice.Bed is { } bed && Larger(choice, works) is { } side ? ("--bed", Sides(bed), Invariant($"--bed {Sides((side, side))} works.")) : null;

    private static (string, string, string)? ByVehicle(ShortFileChoice choice, Func<ShortFileChoice, bool> works)
    {
        foreach (var vehicle in choice.Vehicles)
        {
            if (works(choice with { Vehicles = [.. choice.Vehicles.Where(v => v != vehicle)] }))
            {
                return ("--vehicle", vehicle.Name, choice.Vehicles.Count > 1 ? "Without it the others work."
                    : "Without it a coach of the file's own works: change that to what you have.");
            }
        }

        return null;
    }

    // What two options together keep from working: the one is made as easy as can be, the other is looked for.
    private static (string, string, string)? ByTwo(ShortFileChoice choice, Func<ShortFileChoice, bool> works)
    {
        var roomy = choice with { Bed = (LargestBed, LargestBed) };
        if (Gentler(roomy, works) is { } track && Larger(choice with { Track = track }, works) is { } side)
        {
            return ("--track", Quoted(choice.Track), Invariant($"--track {Quoted(track)} with --bed {Sides((side, side))} works."));
        }

        return choice.Bed is null && Larger(choice, works) is { } alone
            ? ("--scale", choice.Scale.Name, Invariant($"It works with --bed {Sides((alone, alone))}.")) : null;
    }

    private static (string, string, string)? ByScale(ShortFileChoice choice, Func<ShortFileChoice, bool> works)
    {
        double ratio = RatioOf(choice.Scale);
        foreach (var scale in PresetShelf.Of(PresetKind.Scales).Where(s => s != choice.Scale).OrderBy(s => Math.Abs(Math.Log(RatioOf(s) / ratio))))
        {
            if (works(choice with { Scale = scale }))
            {
                return ("--scale", choice.Scale.Name, Invariant($"The nearest scale that works so is --scale {scale.Name}."));
            }
        }

        return null;
    }

    // The same curves, all gentler by one factor: the least that works, rounded up as it would be written; straight where none does.
    private static TrackPiece[]? Gentler(ShortFileChoice choice, Func<ShortFileChoice, bool> works)
    {
        if (!choice.Track.Any(t => t.IsCurve))
        {
            return null;
        }

        TrackPiece[] By(double factor) => [.. choice.Track.Select(t => t.IsCurve ? t with { Radius = Up(t.Radius * factor) } : t)];
        bool WorksBy(double factor) => works(choice with { Track = By(factor) });
        if (Least(WorksBy, 1) is { } least)
        {
            return By(least);
        }

        return works(choice with { Track = [TrackPiece.Straight] }) ? [TrackPiece.Straight] : null;
    }

    private static double? Larger(ShortFileChoice choice, Func<ShortFileChoice, bool> works)
    {
        double now = Math.Max(choice.Bed?.Width ?? 0, choice.Bed?.Depth ?? 0);
        now = Math.Max(now, 60);
        double Side(double factor) => Math.Ceiling(now * factor / 10) * 10;
        return Least(f => Side(f) <= LargestBed && works(choice with { Bed = (Side(f), Side(f)) }), 1) is { } least ? Side(least) : null;
    }

    // The least factor at which something works, within a fiftieth: upwards in steps first, then between the last two.
    private static double? Least(Func<double, bool> works, double from)
    {
        double fails = from, does = from;
        for (int i = 0; i < Steps; i++)
        {
            does *= Step;
            if (!works(does))
            {
                fails = does;
                continue;
            }

            while (does / fails > 1.02)
            {
                double middle = Math.Sqrt(does * fails);
                (fails, does) = works(middle) ? (fails, middle) : (middle, does);
            }

            return does;
        }

        return null;
    }

    private static double Up(double radius)
    {
        double step = radius switch { >= 1000 => 10, >= 100 => 5, _ => 1 };
        return Math.Ceiling(radius / step) * step;
    }

    private static double RatioOf(Preset scale) => (scale.Tree.Find("ratio")?.Value as Reading.TreeNumber)?.Value ?? 1;

    private static string Quoted(IReadOnlyList<TrackPiece> track) => Invariant($"\"{string.Join(", ", track)}\"");

    private static string Sides((double Width, double Depth) bed) => Invariant($"{bed.Width:0.###}x{bed.Depth:0.###}");
}
