using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Reading;
using PlatformForge.Projects.Schemas;
using PlatformForge.Projects.Starts;

namespace PlatformForge.Benchmarks;

/// <summary>
/// The whole walk of which the tests take a few steps: each scale with each vehicle and sharpness of track, shapes and beds in turn, is asked for in the
/// library, without a command line around it;
/// <c>init</c> has tried its file before it gives it, so one trial tells. What is refused is asked for once more as its message says, and has to be given then.
/// Radii are those of the real railway.
/// </summary>
internal static partial class StartRuns
{
    private static readonly double[] Radii = [6, 12, 20, 30, 45, 70, 120, 300];

    private static readonly (double, double)?[] Beds = [null, (180, 180), (256, 256), (120, 300)];

    // Hands of curves; a straight is a space.
    private static readonly string[] Shapes = ["l", "r", "lr", " r", "l l", " ", ""];

    private static readonly Preset[] Scales = [.. PresetShelf.Of(PresetKind.Scales)], Vehicles = [.. PresetShelf.Of(PresetKind.Vehicles)];

    /// <summary>Runs one piece of so many; the number of combinations at fault.</summary>
    public static int Report(int piece, int pieces)
    {
        var all = Choices().Where((_, i) => i % pieces == piece - 1).ToArray();
        var clock = Stopwatch.StartNew();
        int given = 0, refused = 0;
        var faults = new ConcurrentBag<string>();
        Parallel.ForEach(Partitioner.Create(all, EnumerablePartitionerOptions.NoBuffering), choice =>
        {
            var first = FirstFile.Write(choice);
            if (first.Value is { } text)
            {
                Interlocked.Increment(ref given);
                int lines = text.AsSpan().Count('\n');
                if (lines > ShortFile.MostLines)
                {
                    faults.Add($"{Said(choice)}: {lines} lines");
                }

                return;
            }

            Interlocked.Increment(ref refused);
            string said = string.Join(' ', first.Findings.Select(f => f.Message + " " + f.Remedy));
            if (Followed(choice, said) is not { } better || FirstFile.Write(better).Value is null)
            {
                faults.Add($"{Said(choice)}: {said}");
            }
        });
        foreach (string fault in faults.Order(StringComparer.Ordinal))
        {
            Console.WriteLine(fault);
        }

        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"piece {piece} of {pieces}: {all.Length} combinations, {given} given, {refused} refused with what works, {faults.Count} at "
                + $"fault; {clock.Elapsed.TotalSeconds:0} s"));
        return faults.Count;
    }

    // Steps that share no factor with the sizes: every scale with every vehicle and every sharpness once, shapes and beds in turn.
    private static IEnumerable<ShortFileChoice> Choices() => Enumerable.Range(0, Scales.Length * Vehicles.Length * Radii.Length).Select(k =>
    {
        var scale = Scales[k * 7 % Scales.Length];
        double radius = Radius(scale, Radii[k * 5 % Radii.Length]);
        return new ShortFileChoice(scale, [Vehicles[k * 11 % Vehicles.Length]], Beds[k * 3 % Beds.Length],
            [.. Shapes[k % Shapes.Length].Select(c => c == ' ' ? TrackPiece.Straight : new(radius, c == 'l'))]);
    });

    private static double Radius(Preset scale, double metres) => Math.Round(Math.Max(20, metres * 1000 / ((TreeNumber)scale.Tree.Find("ratio")!.Value).Value));

    private static string Said(ShortFileChoice choice) =>
        $"--scale {choice.Scale.Name} --vehicle {choice.Vehicles[0].Name} --track \"{string.Join(", ", choice.Track)}\" --bed {choice.Bed}";

    // What a message says to give instead.
    private static ShortFileChoice? Followed(ShortFileChoice choice, string said)
    {
        bool found = false;
        if (said.Contains("Without it", StringComparison.Ordinal))
        {
            (choice, found) = (choice with { Vehicles = [] }, true);
        }

        if (Track().Match(said) is { Success: true } track)
        {
            (choice, found) = (choice with { Track = [.. track.Groups[1].Value.Split(", ").Select(Piece)] }, true);
        }

        if (Bed().Match(said) is { Success: true } bed)
        {
            (choice, found) = (choice with { Bed = (Number(bed.Groups[1].Value), Number(bed.Groups[2].Value)) }, true);
        }

        return Scale().Match(said) is { Success: true } scale ? choice with { Scale = PresetShelf.Find(PresetKind.Scales, scale.Groups[1].Value)! } : found
            ? choice : null;
    }

    private static TrackPiece Piece(string said) => said.Split(' ') is [var radius, var hand] ? new(Number(radius), hand == "left") : TrackPiece.Straight;

    private static double Number(string said) => double.Parse(said, CultureInfo.InvariantCulture);

    [GeneratedRegex("--track \"([^\"]+)\" w")]
    private static partial Regex Track();

    [GeneratedRegex(@"--bed ([0-9.]+)x([0-9.]+?)(?: works|\.(?:\s|$))")]
    private static partial Regex Bed();

    [GeneratedRegex(@"--scale ([0-9a-z.-]+?)\.?$")]
    private static partial Regex Scale();
}
