using System.Globalization;
using PlatformForge.Exports;
using PlatformForge.Exports.Files;
using PlatformForge.Projects;
using PlatformForge.Projects.Overrides;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Units;
using PlatformForge.Units.Memories;

namespace PlatformForge.Tests.Memories;

/// <summary>
/// Somebody who turns figures of a project at random, back and forth, and stops runs at any moment. After each change the run with a memory is held, byte by
/// byte, against one from nothing. Shared with the benchmarks, which do it for as long as is wanted.
/// </summary>
/// <param name="text">The project.</param>
/// <param name="folder">Where its files are: readings in there are turned, too, so it has to be a folder of its own; null for a project without.</param>
/// <param name="seed">Of the random numbers.</param>
/// <param name="any">Whether any key that a project may have is turned, and not those alone that make a new platform almost always.</param>
/// <param name="keys">Keys that make a new platform almost always; those of a plain halt when null.</param>
internal sealed class RandomEdits(string text, string? folder, int seed, bool any = false, TurnedKeys? keys = null)
{
    private readonly TurnedKeys keys = keys ?? TurnedKeys.Halt;

    private static readonly OutputChoice Plain = new() { Pictures = false };

    private readonly Random random = new(seed);
    private readonly Dictionary<string, string> set = new(StringComparer.Ordinal);
    private readonly List<Dictionary<string, string>> earlier = [];

    /// <summary>What is remembered across the changes.</summary>
    public Memory Memory { get; } = new();

    /// <summary>Runs that were stopped on the way.</summary>
    public int Stopped { get; private set; }

    /// <summary>Runs that came to a design.</summary>
    public int Made { get; private set; }

    /// <summary>One change and its runs.</summary>
    /// <returns>What differs between a run with the memory and one from nothing; null where nothing does.</returns>
    public string? Step()
    {
        string? turned = Turn();
        Override?[] overrides = [.. set.Where(s => !IsFile(s.Key)).Select(s => Override.Parse($"{s.Key}={s.Value}").Value)];
        if (overrides.Contains(null) || ProjectReader.Read(text, "halt.toml", folder, overrides!).Value is not { } project)
        {
            // No key of this project, or a figure that goes with no other: not to be kept.
            set.Remove(turned ?? "");
            return null;
        }

        earlier.Add(new(set, StringComparer.Ordinal));
        if (random.Next(3) == 0)
        {
            // What nobody holds any more may be gone at any moment.
            GC.Collect();
        }

        for (int i = random.Next(3); i > 0; i--)
        {
            StopSomewhere(project);
        }

        string now = string.Join(' ', set.Select(s => IsFile(s.Key) ? s.Key : $"{s.Key}={s.Value}"));
        var pieces = random.Next(3) == 0 ? DesignRun.Shapes(project, new(_ => { }, default) { Memory = Memory }) : null;
        var known = DesignRun.Design(project, new(_ => { }, default) { Memory = Memory });
        var anew = DesignRun.Design(project, RunWatch.None);
        if (anew.Value is null && turned is not null && any)
        {
            // Told by both alike, and then not to be kept: what comes after it would stop where this stopped.
            earlier.RemoveAt(earlier.Count - 1);
            set.Remove(turned);
        }

        return Difference(known, anew, pieces?.Value) is { } difference ? $"{difference} after {now}" : null;
    }

    // The key that was turned; null where everything went back to how it was.
    private string? Turn()
    {
        if (earlier.Count > 0 && random.Next(5) == 0)
        {
            // Back to where it was before.
            set.Clear();
            foreach (var (before, value) in earlier[random.Next(earlier.Count)])
            {
                set[before] = value;
            }

            return null;
        }

        if (folder is not null && random.Next(3) == 0)
        {
            return TurnReading();
        }

        if (any && random.Next(3) > 0)
        {
            var (path, rule) = EveryKey.All[random.Next(EveryKey.All.Count)];
            set[path] = EveryKey.Value(rule, random);
            return path;
        }

        if (random.Next(4) == 0)
        {
            var (choice, words) = keys.Choices[random.Next(keys.Choices.Length)];
            set[choice] = words[random.Next(words.Length)];
            return choice;
        }

        var (key, from, to) = keys.Figures[random.Next(keys.Figures.Length)];
        set[key] = (from + (random.NextDouble() * (to - from))).ToString("R", CultureInfo.InvariantCulture);
        return key;
    }

    // A figure of a table of readings, off by a little.
    private string TurnReading()
    {
        string file = Directory.GetFiles(folder!, "*.csv", SearchOption.AllDirectories).Order(StringComparer.Ordinal).First();
        string[] lines = File.ReadAllText(file).Split('\n');
        int[] rows = [.. Enumerable.Range(0, lines.Length).Where(i => lines[i].Length > 0 && char.IsAsciiDigit(lines[i][0]))];
        int row = rows[random.Next(rows.Length)];
        string[] cells = lines[row].TrimEnd('\r').Split(',');
        cells[1] = (double.Parse(cells[1], CultureInfo.InvariantCulture) + ((random.NextDouble() - 0.5) * 0.4)).ToString("F2", CultureInfo.InvariantCulture);
        lines[row] = string.Join(',', cells);
        File.WriteAllText(file, string.Join('\n', lines));
        return FileMark + file;
    }

    private const string FileMark = "file of readings ";

    private static bool IsFile(string key) => key.StartsWith(FileMark, StringComparison.Ordinal);

    // By a clock or at a stage: anywhere in the middle of a stage's work on several threads, too.
    private void StopSomewhere(ProjectSpec project)
    {
        using var stop = new CancellationTokenSource();
        int stage = random.Next(6);
        if (stage > 3)
        {
            stop.CancelAfter(TimeSpan.FromMilliseconds(random.Next(60)));
        }

        var watch = new RunWatch(
            _ =>
            {
                if (stage-- == 0)
                {
                    stop.Cancel();
                }
            },
            stop.Token)
        { Memory = Memory };
        try
        {
            if (DesignRun.Design(project, watch).Value is { } dossier)
            {
                _ = OutputFiles.Of(dossier, Plain, cancel: stop.Token, memory: Memory);
            }
        }
        catch (OperationCanceledException)
        {
            Stopped++;
        }
    }

    private string? Difference(Outcome<Dossier> known, Outcome<Dossier> anew, IReadOnlyList<PlatformPieces>? pieces)
    {
        if (!known.Findings.SequenceEqual(anew.Findings))
        {
            var differing = known.Findings.Except(anew.Findings).Concat(anew.Findings.Except(known.Findings));
            return $"findings differ: {string.Join("; ", differing.Select(f => $"{f.Code} {f.Message}"))}";
        }

        if (known.Value is not { } mine || anew.Value is not { } fresh)
        {
            return known.Value is null == anew.Value is null ? null : "only one of them made a design";
        }

        Made++;
        if (pieces is not null && pieces.SelectMany(p => p.Pieces).Zip(fresh.Platforms.SelectMany(p => p.Sections.Sections))
            .FirstOrDefault(p => !p.First.Solid.Mesh.Vertices.SequenceEqual(p.Second.Solid.Mesh.Vertices)) is { First: { } odd })
        {
            return $"piece {odd.Number} by itself differs";
        }

        var (files, others) = (OutputFiles.Of(mine, Plain, memory: Memory).Files, OutputFiles.Of(fresh, Plain).Files);
        return !files.Select(f => f.Path).SequenceEqual(others.Select(f => f.Path)) ? "other files"
            : files.Zip(others).FirstOrDefault(f => !f.First.Bytes.AsSpan().SequenceEqual(f.Second.Bytes)) is { First: { } file } ? $"{file.Path} differs"
            : null;
    }
}
