using System.Globalization;
using System.Text.RegularExpressions;
using PlatformForge.Units;

namespace PlatformForge.Tests.Projects.Remedies;

/// <summary>What no sentence of a finding may say, whatever it is about: figures that are none, that nobody can read, or that cannot be.</summary>
internal static class Sentences
{
    // A message is read at a glance: no more letters than this.
    private const int Longest = 600;

    // Four places behind the point are a tenth of a micrometre, which nothing in a finding is told to.
    private static readonly Regex Endless = new(@"(?<![\w.])-?\d+\.\d{5,}|\d{12}", RegexOptions.Compiled),
        Figure = new(@"(?<![\w.])-?\d+(\.\d+)?(E[-+]?\d+)?", RegexOptions.Compiled | RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase);

    private static readonly Regex NoFigure = new(@"NaN|Infinity|∞|-0(?![\w.])|(?<![\w.])\d[\d.]*E[+-]?\d+", RegexOptions.Compiled | RegexOptions.IgnoreCase);

    // "from 3 to 5 mm", "between 3 and 5".
    private static readonly Regex Range = new(@"(?:from|between) (?<low>-?\d[\d.]*(?<!\.)) (?:mm )?(?:to|and) (?<high>-?\d[\d.]*(?<!\.))",
        RegexOptions.Compiled);

    // What can not be below nil: sizes, not places.
    private static readonly Regex Negative = new(
        "(?:measures|wide|width of|length of|long|leaves|left|thick|apart|room of|radius of|by|"
        + "(?<!height |versine |reading )of|only|at most|up to|more than|is) "
        + @"-\d[\d.]* mm(?! above| over| below)"
        + @"|-\d[\d.]* mm (?:wide|long|thick|deep|tall|high|apart|of|too|more|less|are left|is left|left)",
        RegexOptions.Compiled);

    /// <summary>What is wrong with a finding's sentences; empty where nothing is.</summary>
    /// <param name="finding">The finding.</param>
    /// <param name="given">Figures of the user's own, which a message may tell again whatever they are.</param>
    public static IEnumerable<string> Complaints(Finding finding, string given)
    {
        foreach (var (sentence, what) in new[] { (finding.Message, "message"), (finding.Remedy, "remedy") })
        {
            foreach (string fault in Complaints(sentence, what == "message" || finding.Line > 0 ? given : ""))
            {
                yield return $"{finding.Code} {finding.Key}, {what}: {fault} in: {sentence}";
            }
        }
    }

    private static IEnumerable<string> Complaints(string sentence, string given)
    {
        string said = Regex.Replace(sentence, @"""[^""]*""|(?<!\w)'[^']*'(?!\w)", "\"\"");
        if (said.Length > Longest)
        {
            yield return "too long";
        }

        foreach (Match match in NoFigure.Matches(said).Concat(Negative.Matches(said))
            .Where(m => !Given(m.Value) && !given.Contains(m.Value, StringComparison.OrdinalIgnoreCase)))
        {
            yield return $"'{match.Value}'";
        }

        foreach (Match match in Endless.Matches(said).Where(m => !given.Contains(m.Value, StringComparison.Ordinal)
            && !(Places(m.Value) <= MostTold && Given(m.Value))))
        {
            yield return $"'{match.Value}'";
        }

        foreach (Match match in Range.Matches(said).Where(m => Number(m.Groups["low"]) >= Number(m.Groups["high"])
            && !(Given(m.Groups["low"].Value) && Given(m.Groups["high"].Value))))
        {
            yield return $"'{match.Value}'";
        }

        static int Places(string figure) => figure.Contains('.', StringComparison.Ordinal) ? figure.Split('.')[^1].Length : 0;

        // The user's own figure is a number of theirs, told as they wrote it.
        bool Given(string words) => Figure.Match(words) is { Success: true } figure && Figure.Matches(given)
            .Any(g => Math.Abs(Number(g) - Number(figure)) <= Math.Max(0.00005, Math.Abs(Number(g)) * 1e-6));
    }

    // What a user wrote is told again with no more places than this.
    private const int MostTold = 6;

    private static double Number(Group digits) => double.Parse(digits.Value, CultureInfo.InvariantCulture);
}
