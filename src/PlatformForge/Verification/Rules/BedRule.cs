using PlatformForge.Geometry;
using PlatformForge.Sections.Forms;
using PlatformForge.Units;
using PlatformForge.Verification.Distances;
using static System.FormattableString;

namespace PlatformForge.Verification.Rules;

/// <summary>What a plate's file prints lies on the bed, keeps its margin, is not too tall, and nothing lies in anything else.</summary>
internal static class BedRule
{
    /// <summary>What a place on the bed may be off by, mm: numbers in the file are rounded.</summary>
    private const double Slack = 0.001;

    /// <param name="file">Name of the file.</param>
    /// <param name="names">Name of each thing on the plate.</param>
    /// <param name="placed">Its mesh in the bed's coordinates.</param>
    /// <param name="printer">The printer.</param>
    /// <param name="isOneBed">Whether all of it lies on one bed; where beds lie side by side only what lies on what is asked.</param>
    public static IEnumerable<Finding> Check(string file, IReadOnlyList<string> names, IReadOnlyList<Mesh> placed, PrinterSpec printer, bool isOneBed = true)
    {
        var bed = new OutlineDistance(printer.Bed);
        var hulls = placed.Select(m => PlanHull.Of(m.Vertices.Select(v => new Point2(v.X, v.Y)))).ToArray();
        for (int i = 0; i < placed.Count; i++)
        {
            var (low, high) = placed[i].Box();
            double outermost = placed[i].Vertices.Select(v => bed.At(new(v.X, v.Y))).DefaultIfEmpty(double.NegativeInfinity).Max();
            if (isOneBed && outermost > -printer.Margin + Slack)
            {
                yield return Outside(names[i], file, -outermost, printer.Margin);
            }

            if ((isOneBed && high.Z > printer.Height + Slack) || Math.Abs(low.Z) > Slack)
            {
                yield return Fault("PF8014",
                    Invariant($"{names[i]} in '{file}' reaches from {low.Z:F2} to {high.Z:F2} mm above the bed; the printer has {printer.Height:F0} mm."),
                    "Prints begin at 0: build the folder again for this printer.");
            }

        }

        foreach (var finding in Overlaps(file, names, placed, hulls))
        {
            yield return finding;
        }
    }

    private static Finding Outside(string name, string file, double within, double margin)
    {
        var (where, or) = within < 0
            ? (Invariant($"lies up to {-within:F2} mm beyond the edge of the bed."), ".")
            : (Invariant($"comes to {within:F2} mm from the edge of the bed, and {margin:F1} mm is to be kept."), ", or with a margin "
            + Invariant($"of {Math.Floor(within * 100) / 100:F2} mm or less."));
        return Fault("PF8013", Invariant($"{name} in '{file}' {where}"), "Build the folder again for this bed" + or);
    }

    // Things are met in order of their least x, each with those that reach that far; pairs beyond the first few are only counted.
    private static Finding[] Overlaps(string file, IReadOnlyList<string> names, IReadOnlyList<Mesh> placed, List<Point2>[] hulls)
    {
        var boxes = placed.Select(m => m.Box()).ToArray();
        int[] order = [.. Enumerable.Range(0, boxes.Length).OrderBy(i => boxes[i].Low.X)];
        var open = new List<int>();
        var pairs = new List<(int A, int B)>();
        foreach (int i in order)
        {
            open.RemoveAll(k => boxes[k].High.X < boxes[i].Low.X);
            pairs.AddRange(open.Where(k => boxes[k].Low.Y <= boxes[i].High.Y && boxes[i].Low.Y <= boxes[k].High.Y && !PlanHull.AreApart(hulls[i], hulls[k]))
                .Select(k => (Math.Max(i, k), Math.Min(i, k))));
            open.Add(i);
        }

        pairs.Sort();
        var told = pairs.Take(InputLimits.MessagesOfAKind)
            .Select(p => Fault("PF8015", Invariant($"{names[p.A]} and {names[p.B]} in '{file}' lie into each other."), "Build the folder again.")).ToArray();
        return pairs.Count > told.Length ? [.. told, FindingTally.More(told[^1], pairs.Count - told.Length)] : told;
    }

    private static Finding Fault(string code, string what, string remedy) => Finding.Error(code, "", what, remedy, FaultKind.DesignRule);
}
