using McMaster.Extensions.CommandLineUtils;
using PlatformForge.Projects.Catalogue;

namespace PlatformForge.Cli.Commands;

/// <summary>Says what findings mean: one by its code, or all of them.</summary>
internal static class FindingsCommand
{
    private const string Examples = """

        Examples:
          platformforge findings PF4010        what is it raised for, and what mends it?
          platformforge findings               every code in a line
          platformforge findings --markdown    the page docs/findings.md
        """;

    public static void Add(CommandLineApplication app, Session session) => app.Command("findings", command =>
    {
        command.Description = "Say what a finding's code means and what mends it, or list them all.";
        command.ExtendedHelpText = Examples;
        var code = command.Argument("code", "A code, such as PF4010; all of them when left out.");
        var markdown = command.Option("--markdown", "All of them as a page in Markdown.", CommandOptionType.NoValue);
        command.OnExecute(() => session.Finish("findings", _ => markdown.HasValue() ? Page() : Listed(code.Value)));
    });

    private static CommandResult Page() => new([])
    {
        IsTheText = true,
        Plain = o => o.Write(FindingCatalogue.Page()),
        Json = j => j.WriteString("page", FindingCatalogue.Page()),
    };

    private static CommandResult Listed(string? code)
    {
        if (code is not null && FindingCatalogue.Find(code) is null)
        {
            return new([Units.Finding.Error("PF1070", "", $"No finding has the code \"{(code.Length > 40 ? code[..40] + "…" : code)}\".",
                "See: platformforge findings") with { File = "findings" }])
            { ExitCode = ExitCodes.Usage };
        }

        var entries = code is null ? FindingCatalogue.Entries : [FindingCatalogue.Find(code)!];
        return new([])
        {
            IsTheText = true,
            Plain = o =>
            {
                foreach (var entry in entries)
                {
                    o.WriteLine($"{entry.Code}  {entry.RaisedFor}");
                    o.WriteLine($"  {entry.Cure}");
                    if (entry.NoValue is { } why)
                    {
                        o.WriteLine($"  No value is offered: {char.ToLowerInvariant(why[0])}{why[1..]}");
                    }
                }
            },
            Json = j =>
            {
                j.WriteStartArray("entries");
                foreach (var entry in entries)
                {
                    j.WriteStartObject();
                    j.WriteString("code", entry.Code);
                    j.WriteString("raised_for", entry.RaisedFor);
                    j.WriteString("cure", entry.Cure);
                    j.WriteString("no_value", entry.NoValue);
                    j.WriteEndObject();
                }

                j.WriteEndArray();
            },
        };
    }
}
