using McMaster.Extensions.CommandLineUtils;

namespace PlatformForge.Cli.Commands;

/// <summary>Says whether a design is sound, and writes nothing.</summary>
internal static class CheckCommand
{
    private const string Examples = """

        Examples:
          platformforge check my-halt.toml
          platformforge check my-halt.toml --set platform[0].deck.thickness=2
        """;

    public static void Add(CommandLineApplication app, Session session) => app.Command("check", command =>
    {
        command.Description = "Say whether a design is sound, and what comes nearest; write nothing.";
        command.ExtendedHelpText = Examples;
        var project = new ProjectArguments(command);
        command.OnExecute(() => session.Finish("check", _ => project.Read() is { Value: { } spec } read
            ? new(read.Findings) { Plain = o => o.WriteLine($"{spec.Layout.Name}: the project file is in order.") }
            : new(project.Read().Findings)));
    });
}
