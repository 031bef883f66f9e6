using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Projects.Overrides;
using PlatformForge.Projects.Reading;
using PlatformForge.Units;

namespace PlatformForge.Projects.Remedies;

/// <summary>
/// Looks for the value of a number nearest to the stated one that mends a finding: steps that double on both sides until one
/// works, halved back towards the last that did not, then as round as works.
/// </summary>
internal static class ValueSearch
{
    // First step: this share of the value, and no less than this.
    private const double FirstShare = 1.0 / 64, FirstStep = 0.05;

    private const int Doublings = 14, Halvings = 5, MostDigits = 3;

    // Where a search begins for a key of which nothing else is known.
    private const double Typical = 100;

    /// <summary>The value; null when none was found.</summary>
    /// <param name="rule">What the key takes.</param>
    /// <param name="stated">The value at fault.</param>
    /// <param name="works">Tries a value.</param>
    public static double? Nearest(NumberRule rule, double stated, Func<double, bool> works)
    {
        double start = Math.Clamp(stated, rule.Range.Lowest, rule.Range.Most), step = Math.Max(FirstStep, Math.Abs(start) * FirstShare);
        double below = start, above = start;
        for (int i = 0; i < Doublings; i++, step *= 2)
        {
            double down = Within(rule, start, start - step), up = Within(rule, start, start + step);
            if (down < below && works(down))
            {
                return Rounded(rule, start, below, down, works);
            }

            if (up > above && works(up))
            {
                return Rounded(rule, start, above, up, works);
            }

            (below, above) = (down, up);
        }

        return null;
    }

    // A value as it can be written, where the key takes it.
    private static double Within(NumberRule rule, double start, double value) =>
        Math.Clamp(Math.Round(value, rule.Whole ? 0 : MostDigits + 1), rule.Range.Lowest, rule.Range.Most) is var v && rule.Range.Holds(v) ? v : start;

    // A short figure that works, next to where values begin to.
    private static double Rounded(NumberRule rule, double start, double bad, double good, Func<double, bool> works)
    {
        for (int i = 0; i < Halvings && !rule.Whole; i++)
        {
            double middle = Within(rule, start, (bad + good) / 2);
            (bad, good) = works(middle) ? (bad, middle) : (middle, good);
        }

        for (int digits = 0; digits <= MostDigits; digits++)
        {
            double unit = Math.Pow(10, digits), round = (good > bad ? Math.Ceiling(good * unit) : Math.Floor(good * unit)) / unit;
            if (rule.Range.Holds(round) && Math.Abs(round - good) <= 2 * Math.Abs(good - bad) && works(round))
            {
                return round;
            }
        }

        return good;
    }

    /// <summary>The number that a key has now, in the file's unit; null when it has none.</summary>
    public static double? Stated(TreeTable tree, string key, NumberRule rule)
    {
        var node = CuredTree.Find(tree, key);
        double? value = node switch
        {
            TreeNumber number => number.Value,
            TreeText text when rule.IsLength && LengthText.Read(text.Value, ScaleOf(tree)) is { } length => length,
            _ => Parsed(rule.Default) ?? Parsed(KeyModel.ExampleOf(key)),
        };
        return value is { } v && !double.IsNaN(v) ? v : Parsed(KeyModel.ExampleOf(key)) ?? Math.Clamp(Typical, rule.Range.Lowest, rule.Range.Most);
    }

    /// <summary>The project's scale; 4 mm to the foot where it tells none.</summary>
    public static ModelScale ScaleOf(TreeTable tree) =>
        new((CuredTree.Find(tree, "layout.ratio") as TreeNumber)?.Value is { } ratio && double.IsFinite(ratio) ? ratio : 76.2);

    /// <summary>The number that a text is; null when it is none.</summary>
    public static double? Parsed(string? text) =>
        double.TryParse(text, System.Globalization.NumberStyles.Float, System.Globalization.CultureInfo.InvariantCulture, out double value) ? value : null;
}
