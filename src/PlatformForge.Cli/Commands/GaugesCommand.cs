using McMaster.Extensions.CommandLineUtils;
using PlatformForge.Cli.Arguments;
using PlatformForge.Exports;
using PlatformForge.Projects.Overrides;

namespace PlatformForge.Cli.Commands;

/// <summary>Makes gauges and proofs alone.</summary>
internal static class GaugesCommand
{
    private const string Examples = """

        Examples:
          platformforge gauges my-halt.toml                       test slices, slide gauges, throw boards, footprints, coupons, the strip
          platformforge gauges my-halt.toml --at 420 --at 640     slide gauges for these chainages
        """;

    public static void Add(CommandLineApplication app, Session session) => app.Command("gauges", command =>
    {
        command.Description = "Write what is printed before the platform is: slices, slide gauges, throw boards, footprints, coupons.";
        command.ExtendedHelpText = Examples;
        var project = new ProjectArguments(command);
        var folder = command.Option("-o|--output <folder>", "Folder to write; named after the project file, with -gauges, when left out.",
            CommandOptionType.SingleValue);
        var force = command.Option("--force", "Write even beside and over files that this program did not write.", CommandOptionType.NoValue);
        var at = command.Option("--at <chainage>", "Chainage, in mm or with its unit, at which a slide gauge is made. Repeatable.",
            CommandOptionType.MultipleValue);
        command.OnExecute(() => session.Finish("gauges", show =>
        {
            if (ChosenSections.Read("--at", at.Values, out var chainages) is { } fault)
            {
                return fault;
            }

            Override[] values = chainages.Count == 0 ? []
                : [new("gauges.at", "[" + string.Join(", ", chainages.Select(c => c.ToString("R", System.Globalization.CultureInfo.InvariantCulture))) + "]",
                "--at")];
            var wanted = new OutputChoice
            {
                Prints = false,
                Pictures = false,
                Drawings = false,
                Tables = false,
                Report = false,
                Masks = false,
                Gauges = true,
                GaugePictures = true,
            };
            return BuildCommand.Build(project, folder.Value(), force.HasValue(), wanted, null, session.Watch(show), values);
        }));
    });
}
