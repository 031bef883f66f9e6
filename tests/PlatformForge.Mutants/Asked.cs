using System.Globalization;

namespace PlatformForge.Mutants;

/// <summary>What the command line asks for.</summary>
/// <param name="Command">prepare, go, report or all.</param>
/// <param name="Rooms">Rooms to change.</param>
/// <param name="Count">Mutants of each.</param>
/// <param name="Seed">Of the lot.</param>
/// <param name="Jobs">How many at a time.</param>
/// <param name="Minutes">No mutant is begun after so many; the next run goes on where this one stopped.</param>
/// <param name="Wide">Survivors of their room's own tests are tried on the tests of all rooms.</param>
/// <param name="Keys">These mutants alone, whatever the lot says: to see whether a new test kills them.</param>
/// <param name="Least">Percentage killed below which the report ends with 1.</param>
/// <param name="Longest">Classes of tests that take more seconds than this are left out.</param>
internal sealed record Asked(
    string Command, string[] Rooms, int Count, int Seed, int Jobs, double Minutes, bool Wide, string[] Keys, double Least, double Longest)
{
    public string Folder => Path.Combine(AppContext.BaseDirectory, "mutated");

    public static Asked Of(string[] args)
    {
        var asked = new Asked(args.FirstOrDefault() ?? "", [.. PlatformForge.Mutants.Rooms.Names], 300, 1, 1, double.PositiveInfinity, false, [], 0, 20);
        for (int i = 1; i < args.Length; i++)
        {
            string value = i + 1 < args.Length ? args[i + 1] : "";
            asked = args[i] switch
            {
                "--rooms" => asked with { Rooms = value.Split(',') },
                "--count" => asked with { Count = int.Parse(value, CultureInfo.InvariantCulture) },
                "--seed" => asked with { Seed = int.Parse(value, CultureInfo.InvariantCulture) },
                "--jobs" => asked with { Jobs = int.Parse(value, CultureInfo.InvariantCulture) },
                "--minutes" => asked with { Minutes = double.Parse(value, CultureInfo.InvariantCulture) },
                "--keys" => asked with { Keys = value.Split(',') },
                "--least" => asked with { Least = double.Parse(value, CultureInfo.InvariantCulture) },
                "--longest" => asked with { Longest = double.Parse(value, CultureInfo.InvariantCulture) },
                "--wide" => asked with { Wide = true },
                _ => throw new ArgumentException($"'{args[i]}' is not known."),
            };
            i += args[i] == "--wide" ? 0 : 1;
        }

        return asked;
    }
}
