using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Solids;

namespace PlatformForge.Exports.Drawings.Plans;

/// <summary>A bank in plan: its foot, and hachures down its face, long and short in turn.</summary>
internal static class BankHachures
{
    // mm on the sheet from one to the next, and how far down the short ones go.
    private const double Apart = 1.6, Short = 0.45;

    private static readonly Pen Stroke = new(0.1, HouseStyle.Quiet);

    /// <summary>How it is told in a key.</summary>
    public static void Key(Sheet sheet, double x, double y)
    {
        sheet.Line(new(x, y - 1.5), new(x + 7, y - 1.5), HouseStyle.Thin);
        for (int i = 0; i < 5; i++)
        {
            double along = x + 0.7 + (i * 1.4);
            sheet.Line(new(along, y - 1.5), new(along, y - 1.5 + (i % 2 == 0 ? 3 : 1.4)), Stroke);
        }
    }

    public static void DrawOn(Sheet sheet, PlanView view, PlatformPlan plan)
    {
        if (plan.Bank is not { } bank)
        {
            return;
        }

        Point2 Edge(double s) => view.Of(plan.ToLayout(s, bank.Edge.At(s)));
        Point2 Foot(double s) => view.Of(plan.ToLayout(s, bank.Foot.At(s)));
        sheet.Area(plan.Stations.Select(Edge).Concat(plan.Stations.Reverse().Select(Foot)), new(Palette.Of(Paint.Turf), 0.18), null);
        sheet.Lines(plan.Stations.Select(Foot), HouseStyle.Thin);
        foreach (var turn in bank.Returns)
        {
            Round(sheet, view, turn);
        }

        double from = plan.Stations[0], to = plan.Stations[^1];
        int count = Math.Max(1, (int)((to - from) / (Apart * view.Reduction)));
        for (int i = 0; i <= count; i++)
        {
            double s = from + ((to - from) * i / count);
            Point2 edge = Edge(s), foot = Foot(s);
            sheet.Line(edge, edge + ((foot - edge) * (i % 2 == 0 ? 1 : Short)), Stroke);
        }
    }

    // A return: strokes from the corner, the short ones at its foot, where there is room for them.
    private static void Round(Sheet sheet, PlanView view, BankReturn turn)
    {
        Point2 corner = view.Of(turn.Corner);
        Point2[] toe = [.. turn.Toe.Select(view.Of)];
        sheet.Area(toe.Prepend(corner), new(Palette.Of(Paint.Turf), 0.18), null);
        sheet.Lines(toe.Append(corner), HouseStyle.Thin);
        for (int i = 1; i + 1 < toe.Length; i++)
        {
            sheet.Line(i % 2 == 0 ? corner + ((toe[i] - corner) * 0.15) : corner + ((toe[i] - corner) * Short), toe[i], Stroke);
        }
    }
}
