using McMaster.Extensions.CommandLineUtils;
using PlatformForge.Exports;
using PlatformForge.Projects.Schemas;

namespace PlatformForge.Cli.Commands;

/// <summary>Prints the JSON Schema of project files, or of a file in a built folder.</summary>
internal static class SchemaCommand
{
    private const string ProjectFile = "project";

    private const string Examples = """

        Example:
          platformforge schema > project.schema.json    then begin project files with: #:schema ./project.schema.json
          platformforge schema report                   of report.json in a built folder; design and manifest likewise
        """;

    public static void Add(CommandLineApplication app, Session session) => app.Command("schema", command =>
    {
        command.Description = "Print the JSON Schema of project files, for editors that complete and check TOML, or of what a build writes for other programs.";
        command.ExtendedHelpText = Examples;
        var of = command.Argument("of", $"What it is a schema of: {ProjectFile} (when left out), {string.Join(", ", FileSchemas.All.Keys)}.")
            .Accepts(v => v.Values(true, [ProjectFile, .. FileSchemas.All.Keys]));
        command.OnExecute(() =>
            session.Finish("schema", _ => Of(of.Value is { } name && FileSchemas.All.TryGetValue(name.ToLowerInvariant(), out var written) ? written()
                : ProjectSchema.Write())));
    });

    private static CommandResult Of(string schema) => new([])
    {
        IsTheText = true,
        Plain = o => o.Write(schema),
        Json = j =>
        {
            j.WritePropertyName("schema");
            j.WriteRawValue(schema);
        },
    };
}
