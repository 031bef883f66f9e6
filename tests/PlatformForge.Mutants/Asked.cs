using System.Globalization;

namespace PlatformForge.Mutants;

/// <summary>What the command line asks for.</summary>
/// <param name="Command">prepare, renew, go, report or all.</param>
/// <param name="Rooms">Rooms to change.</param>
/// <param name="Count">Mutants of each.</param>
/// <param name="Seed">Of the lot.</param>
/// <param name="Minutes">No mutant is begun after so many; the next run goes on where this one stopped.</param>
/// <param name="Again">Survivors are tried on tests that they have not met.</param>
/// <param name="Keys">These mutants alone, whatever the lot says.</param>
/// <param name="Tests">Only tests whose name contains one of these; none for all.</param>
/// <param name="Least">Percentage found below which the report ends with 1.</param>
/// <param name="Longest">A test that takes more seconds of processor than this is left out.</param>
/// <param name="Most">Seconds of processor that the tests of one mutant take without it; one that passes them counts as survived.</param>
internal sealed record Asked(
    string Command, string[] Rooms, int Count, int Seed, double Minutes, bool Again, string[] Keys, string[] Tests, double Least, double Longest, double Most)
{
    public string Folder => Path.Combine(AppContext.BaseDirectory, "mutated");

    public bool Concerns(string test) => Tests.Length == 0 || Tests.Any(t => test.Contains(t, StringComparison.Ordinal));

    public static Asked Of(string[] args)
    {
        var asked = new Asked(args.FirstOrDefault() ?? "", [.. PlatformForge.Mutants.Rooms.Names], 300, 1, 1e6, false, [], [], 0, 60, 20);
        for (int i = 1; i < args.Length; i++)
        {
            string value = i + 1 < args.Length ? args[i + 1] : "";
            asked = args[i] switch
            {
                "--rooms" => asked with { Rooms = value.Split(',') },
                "--count" => asked with { Count = int.Parse(value, CultureInfo.InvariantCulture) },
                "--seed" => asked with { Seed = int.Parse(value, CultureInfo.InvariantCulture) },
                "--minutes" => asked with { Minutes = Number(value) },
                "--keys" => asked with { Keys = value.Split(',') },
                "--tests" => asked with { Tests = value.Split(',') },
                "--least" => asked with { Least = Number(value) },
                "--longest" => asked with { Longest = Number(value) },
                "--most" => asked with { Most = Number(value) },
                "--again" => asked with { Again = true },
                _ => throw new ArgumentException($"'{args[i]}' is not known."),
            };
            i += args[i] == "--again" ? 0 : 1;
        }

        return asked;
    }

    /// <summary>The same for a process that runs tests.</summary>
    public IEnumerable<string> ForChild(string command, double minutes)
    {
        string[] numbers = [command, "--minutes", Text(minutes), "--longest", Text(Longest), "--most", Text(Most), "--rooms", string.Join(',', Rooms)];
        return [.. numbers, .. Tests.Length > 0 ? new[] { "--tests", string.Join(',', Tests) } : [], .. Again ? new[] { "--again" } : []];
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static string Text(double number) => number.ToString(CultureInfo.InvariantCulture);
}
