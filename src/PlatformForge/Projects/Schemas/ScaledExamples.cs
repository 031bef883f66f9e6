using System.Globalization;
using System.Text.RegularExpressions;
using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Reading;
using PlatformForge.Units;

namespace PlatformForge.Projects.Schemas;

/// <summary>The examples of the starting file, which are told for 4 mm to the foot, at another scale.</summary>
/// <param name="preset">The scale.</param>
internal sealed class ScaledExamples(Preset preset)
{
    private const double Told = 76.2;

    // What is printed or kept by hand is as large in every scale.
    private static readonly string[] Unscaled = ["clearance.", "printer.", "sections.", "joint.", "paper."];

    private static readonly Regex AlignmentLength = new(@"(?<key>straight|transition|to_radius|curve) = (?<mm>[0-9.]+)",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture);

    public ModelScale Scale { get; } = new((preset.Tree.Find("ratio")?.Value as TreeNumber)?.Value ?? Told);

    /// <summary>An example as it stands in a file of this scale; null where there is none.</summary>
    public string? Of(KeyRule rule, string path, string? example) => (example, path) switch
    {
        (null, _) => null,
        (_, "layout.scale") => $"\"{preset.Name}\"",
        (_, "layout.ratio") => Scale.Ratio.ToString(CultureInfo.InvariantCulture),
        (_, "layout.gauge") => (preset.Tree.Find("gauge")?.Value as TreeNumber)?.Value.ToString(CultureInfo.InvariantCulture) ?? example,
        _ when Scale.Ratio == Told || Unscaled.Any(u => path.StartsWith(u, StringComparison.Ordinal)) => example,
        (_, "track.alignment") => AlignmentLength.Replace(example, m => $"{m.Groups["key"].Value} = {Scaled(m.Groups["mm"].Value)}"),
        _ when rule is NumberRule { IsLength: true } or ListRule { Item: NumberRule { IsLength: true } } => Regex.Replace(example, "[0-9]+(\\.[0-9]+)?",
            m => Scaled(m.Value)),
        _ => example,
    };

    private string Scaled(string mm) => Length(double.Parse(mm, CultureInfo.InvariantCulture));

    /// <summary>A length that is told for 4 mm to the foot, mm, at this scale: rounded as a person would write it.</summary>
    public string Length(double mm) => Lengths(mm).ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>The same as a number.</summary>
    public double Lengths(double mm) => Rounded(mm * Told / Scale.Ratio);

    /// <summary>A length of the model, mm, rounded as a person would write it.</summary>
    public double Rounded(double length)
    {
        double step = length switch { >= 100 => 5, >= 30 => 1, >= 5 => 0.5, >= 1 => 0.1, _ => 0.05 };
        return Math.Round(Math.Round(length / step) * step, 2);
    }
}
