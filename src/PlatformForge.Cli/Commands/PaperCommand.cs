using System.Globalization;
using McMaster.Extensions.CommandLineUtils;
using PlatformForge.Cli.Arguments;
using PlatformForge.Exports;
using PlatformForge.Exports.Paper;
using PlatformForge.Projects.Overrides;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Cli.Commands;

/// <summary>Makes the full-size sheets alone.</summary>
internal static class PaperCommand
{
    private const string Examples = """

        Examples:
          platformforge paper my-halt.toml                        sheets of A4 along the track, into the folder my-halt-paper
          platformforge paper my-halt.toml --size Letter
          platformforge paper my-halt.toml --size 610x914 --by page
          platformforge paper my-halt.toml --bars 99.6,100.2      again, after measuring the bars of 100 mm across and up
        """;

    public static void Add(CommandLineApplication app, Session session) => app.Command("paper", command =>
    {
        command.Description = "Write the plan at full size over sheets of paper, to be laid on the layout.";
        command.ExtendedHelpText = Examples;
        var project = new ProjectArguments(command);
        var folder = command.Option("-o|--output <folder>", "Folder to write; named after the project file, with -paper, when left out.",
            CommandOptionType.SingleValue);
        var force = command.Option("--force", "Write even beside and over files that this program did not write.", CommandOptionType.NoValue);
        var size = command.Option("--size <size>",
            $"Paper: {string.Join(", ", PaperSizes.All.Take(5).Select(s => s.Name))}, or width x height in mm, such as 300x900.",
            CommandOptionType.SingleValue);
        var by = command.Option("--by <layout>", "track: sheet after sheet along the track; page: rows and columns of one large page.",
            CommandOptionType.SingleValue);
        var bars = command.Option("--bars <across,up>", "What the bars of 100 mm measure on a sheet printed without this option, in mm.",
            CommandOptionType.SingleValue);
        command.OnExecute(() => session.Finish("paper", show => Values(bars.Value(), size.Value(), by.Value()) is { } values
            ? BuildCommand.Build(project, folder.Value(), force.HasValue(), PaperAlone, null, session.Watch(show), values)
            : NoBars(bars.Value()!)));
    });

    private static readonly OutputChoice PaperAlone = new()
    {
        Prints = false,
        Pictures = false,
        Drawings = false,
        Tables = false,
        Report = false,
        Masks = false,
        Paper = true,
    };

    // What the options set in the project; null where the bars are not two figures.
    private static List<Override>? Values(string? bars, string? size, string? by)
    {
        var values = new List<Override>();
        if (bars is not null)
        {
            if (Pair(bars, ",;x ") is not { } pair)
            {
                return null;
            }

            values.Add(new("paper.bars", Invariant($"[{pair.A}, {pair.B}]"), "--bars"));
        }

        if (size is not null)
        {
            values.Add(new("paper.size", Pair(size, "x×X") is { } sides ? Invariant($"[{sides.A}, {sides.B}]") : Quoted(size), "--size"));
        }

        if (by is not null)
        {
            values.Add(new("paper.layout", Quoted(by), "--by"));
        }

        return values;
    }

    private static string Quoted(string word) => $"\"{word.Replace("\"", "", StringComparison.Ordinal)}\"";

    // Two numbers with one of the signs between them.
    private static (double A, double B)? Pair(string text, string signs) =>
        text.Split(signs.ToCharArray(), StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries) is [var a, var b]
        && double.TryParse(a, NumberStyles.Float, CultureInfo.InvariantCulture, out double first)
        && double.TryParse(b, NumberStyles.Float, CultureInfo.InvariantCulture, out double second)
        && double.IsFinite(first) && double.IsFinite(second)
            ? (first, second)
            : null;

    private static CommandResult NoBars(string text)
    {
        string said = text.Length > 40 ? text[..40] + "…" : text;
        var fault = Finding.Error("PF7441", "", $"\"{said}\" is not what two bars measure.",
            "Give both in mm, across and up, with a comma between and a point in each figure, such as --bars 99.6,100.2.");
        return new([fault with { File = "--bars" }]) { ExitCode = ExitCodes.Usage };
    }
}
