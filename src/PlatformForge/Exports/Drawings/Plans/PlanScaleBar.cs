using PlatformForge.Exports.Drawings.Ink;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Plans;

/// <summary>The bar of a plan that tells lengths of the model, whatever the drawing is reduced by.</summary>
internal static class PlanScaleBar
{
    public static void DrawOn(Sheet sheet, PlanView view, Labels labels)
    {
        double step = view.Reduction > 4 ? 100 : 50, y = sheet.Height - TitleBlock.Margin - TitleBlock.Depth - 7, x = TitleBlock.Inset;
        for (int i = 0; i < 4; i++)
        {
            sheet.Box(x + (i * step / view.Reduction), y, step / view.Reduction, 1.4, new(i % 2 == 0 ? HouseStyle.Ink : HouseStyle.White), HouseStyle.Thin);
        }

        for (int i = 0; i <= 4; i += 2)
        {
            sheet.Text(Invariant($"{i * step:F0}"), new(x + (i * step / view.Reduction), y - 1), HouseStyle.Small,
                i == 0 ? TextAnchor.Start : TextAnchor.Middle);
        }

        double end = x + (4 * step / view.Reduction);
        sheet.Text("mm of the model", new(end + 5, y + 1.4), HouseStyle.Small);
        labels.Keep(x - 1, y - 4, end + 30, y + 2);
    }
}
