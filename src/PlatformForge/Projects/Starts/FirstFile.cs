using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Schemas;
using PlatformForge.Projects.Watches;
using PlatformForge.Units;

namespace PlatformForge.Projects.Starts;

/// <summary>
/// A first project file that is a sound design, since it was tried: what the user has said stays as it was said, the rest gives way until the design passes.
/// Where nothing
/// that may give way is enough, it is refused by the option that stands in the way, with a value for it that was tried too.
/// </summary>
public static class FirstFile
{
    // Widths of a deck, told for 4 mm to the foot: of 12, 10, 8 and 6.5 ft.
    private static readonly double[] Decks = [ShortFileSizes.UsualDeck, 40, 32, 26];

    // Beds that are had, mm of a side, where the user's is not known.
    private static readonly double[] Beds = [ShortFileSizes.UsualBed, 256, 300, 350, 420, 500, 600];

    /// <summary>The text of a file that passes <c>check</c>, or why there is none.</summary>
    public static Outcome<string> Write(ShortFileChoice choice, CancellationToken cancel = default)
    {
        var trial = Tried(choice, cancel);
        return trial.Text is { } text ? Outcome.Of(text) : Outcome.Fault<string>(FirstFileAdvice.Of(choice, trial.Fault!, cancel));
    }

    /// <summary>The first file that passes, or the fault of the one with all its usual sizes.</summary>
    internal static Trial Tried(ShortFileChoice choice, CancellationToken cancel)
    {
        Finding? first = null;
        foreach (var sizes in Ways(choice))
        {
            cancel.ThrowIfCancellationRequested();
            var trial = Fault(ShortFile.Write(choice, sizes), cancel);
            if (trial is null)
            {
                return new(ShortFile.Write(choice, sizes), null);
            }

            first ??= trial;
            if (!trial.Code.StartsWith("PF4", StringComparison.Ordinal) && !trial.Code.StartsWith("PF6", StringComparison.Ordinal))
            {
                break; // track and vehicles do not go together: sizes of the platform have no part in it
            }
        }

        return new(null, first);
    }

    private static IEnumerable<ShortFileSizes> Ways(ShortFileChoice choice)
    {
        var usual = ShortFileSizes.Usual(choice);
        usual = usual with { RunUp = Longest(ShortFile.Write(choice, usual)) };
        string[] sides = choice.Track.Any(t => t.IsCurve) ? ["right", "left"] : ["right"];
        (double, double)[] beds = choice.Bed is { } bed ? [bed] : [.. Beds.Select(b => (b, b))];
        return from size in beds from deck in Decks from side in sides select usual with { Bed = size, Deck = deck, Side = side };
    }

    // The longest vehicle of a file, mm: so much track has to be known beyond both ends of a platform.
    private static double Longest(string text) =>
        ProjectReader.Read(text, Name).Value is { } project ? project.Vehicles.Select(v => v.Length).DefaultIfEmpty(0).Max() : 0;

    // The first error of a text as a project, from reading it to holding the sections against the trains.
    private static Finding? Fault(string text, CancellationToken cancel)
    {
        var read = ProjectReader.Read(text, Name);
        if (read.Value is not { } project)
        {
            return Worst(read.Findings);
        }

        var watch = RunWatch.None with { Cancel = cancel };
        var design = DesignRun.Design(project, watch);
        return design.Value is { } dossier
            ? Worst([.. read.Findings, .. design.Findings, .. TrialVerdict.Of(dossier, cancel: cancel).Findings])
            : Worst(design.Findings);
    }

    private static Finding? Worst(IEnumerable<Finding> findings) => findings.FirstOrDefault(f => f.Severity == Severity.Error);

    private const string Name = "platform.toml";

    /// <summary>What came of a choice: a text, or the fault of it.</summary>
    internal readonly record struct Trial(string? Text, Finding? Fault);
}
