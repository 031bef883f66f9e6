using McMaster.Extensions.CommandLineUtils;
using PlatformForge.Projects.Schemas;

namespace PlatformForge.Cli.Commands;

/// <summary>Prints the JSON Schema of project files.</summary>
internal static class SchemaCommand
{
    private const string Examples = """

        Example:
          platformforge schema > project.schema.json    then begin project files with: #:schema ./project.schema.json
        """;

    public static void Add(CommandLineApplication app, Session session) => app.Command("schema", command =>
    {
        command.Description = "Print the JSON Schema of project files, for editors that complete and check TOML.";
        command.ExtendedHelpText = Examples;
        command.OnExecute(() => session.Finish("schema", _ => new([])
        {
            IsTheText = true,
            Plain = o => o.Write(ProjectSchema.Write()),
            Json = j =>
            {
                j.WritePropertyName("schema");
                j.WriteRawValue(ProjectSchema.Write());
            },
        }));
    });
}
