using PlatformForge.Clearance;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Gaps;

/// <summary>The column beside the gap plot: vehicles, budget and what each style of edge costs.</summary>
internal sealed class GapKey(Dossier dossier, PlatformDossier platform, double leastReach)
{
    private readonly RequirementTrace need = platform.Plan.Requirement;

    private const double Row = 5.2;

    // Room for the two notes under the rows of gaps.
    private const double UnderRows = 12;

    public void DrawOn(Sheet sheet, double left, double top, double width)
    {
        double y = Vehicles(sheet, left, top, width);
        y = Budget(sheet, left, y + 5, width);
        Styles(sheet, left, y + 5, width);
    }

    private double Vehicles(Sheet sheet, double left, double top, double width)
    {
        sheet.Text("Vehicles", new(left, top + 2), HouseStyle.Subheading);
        double y = top + 7;
        var looks = new VehicleLooks(platform);

        // Those of other tracks and trucks of engines count where they govern; elsewhere they are no matter of this platform's edge.
        int[] trucks = [.. platform.Envelope.Parts.Where(p => p.Vehicle.TruckOf is not null).Select(need.IndexOf).Distinct()];
        foreach (int i in Enumerable.Range(0, need.Vehicles.Count)
            .Where(i => (need.OtherTrack(i).Length == 0 && !trucks.Contains(i)) || need.GoverningVehicle.Contains(i)))
        {
            string name = need.Called(i) + (Shows(i) ? "" : ", below the plot");
            var (colour, pattern) = looks[i];
            sheet.Box(left, y - 2.6, 8, 3.4, new(colour, 0.2), null);
            sheet.Box(left, y - 2.6, 8, 3.4, new(colour, 0.75, pattern), new(0.25, colour));
            VehicleMark.Draw(sheet, new(left + 11, y - 0.9), 1, i, colour);
            sheet.Text(name, new(left + 14, y), TitleBlock.Fitting(name, HouseStyle.Label, width - 14));
            y += Row;
        }

        return y;
    }

    // Whether a vehicle's reach or its doors are in the plots: one that stays far from the edge has no line there.
    private bool Shows(int vehicle) =>
        need.GoverningVehicle.Contains(vehicle) || platform.Plan.Gaps.Traces.Any(t => need.IndexOf(t.Vehicle) == vehicle)
        || platform.Envelope.Parts.Any(p => p.IsFaced && need.IndexOf(p) == vehicle && p.Towards(platform.Plan.Side)
            .Any(r => double.IsFinite(r) && r > leastReach));

    private double Budget(Sheet sheet, double left, double top, double width)
    {
        sheet.Text("Clearance budget, mm", new(left, top + 2), HouseStyle.Subheading);
        double y = top + 7;
        foreach (var line in platform.Budget.Lines.Where(l => l.Placing != BudgetPlacing.Swept))
        {
            y = Entry(sheet, left, y, width, line);
        }

        sheet.Line(new(left, y - 3.2), new(left + width, y - 3.2), HouseStyle.Thin);
        bool sum = platform.Budget.Rule == BudgetRule.Sum;
        y = Total(sheet, left, y + 0.6, width, "sum", platform.Budget.Sum, sum);
        y = Total(sheet, left, y, width, "tolerances as root of squares", platform.Budget.RootOfSquares, !sum);
        BudgetLine[] swept = [.. platform.Budget.Lines.Where(l => l.Placing == BudgetPlacing.Swept)];
        if (swept.Length > 0)
        {
            sheet.Text("in the reach already, swept with the vehicles:", new(left, y), HouseStyle.Small);
            y += Row - 0.6;
        }

        foreach (var line in swept)
        {
            y = Entry(sheet, left, y, width, line);
        }

        return y;
    }

    private static double Entry(Sheet sheet, double left, double y, double width, BudgetLine line)
    {
        sheet.Text(line.Name, new(left, y), TitleBlock.Fitting(line.Name, HouseStyle.Label, width - 14));
        sheet.Text(Figures.Fine(line.AmountMm), new(left + width, y), HouseStyle.Label, TextAnchor.End);
        return y + Row - 0.6;
    }

    private static double Total(Sheet sheet, double left, double y, double width, string name, double amount, bool governs)
    {
        var style = governs ? HouseStyle.Strong : HouseStyle.Label;
        sheet.Text(governs ? name + ", added to the reach" : name, new(left, y), style);
        sheet.Text(Figures.Fine(amount), new(left + width, y), style, TextAnchor.End);
        return y + Row - 0.6;
    }

    private void Styles(Sheet sheet, double left, double top, double width)
    {
        sheet.Text("Gap to the door sill, mm", new(left, top + 2), HouseStyle.Subheading);
        double[] columns = [left + (0.56 * width), left + (0.70 * width), left + (0.84 * width), left + width];
        double y = top + 7.5;
        foreach (var (name, x) in new[] { ("least", columns[0]), ("mean", columns[1]), ("most", columns[2]), ("limit", columns[3]) })
        {
            sheet.Text(name, new(x, y), HouseStyle.Small, TextAnchor.End);
        }

        foreach (var style in Enum.GetValues<EdgeStyle>())
        {
            var rows = platform.Plan.Gaps.Rows.Where(r => r.Style == style).ToArray();
            if (rows.Length == 0 || y + (Row * (rows.Length + 1)) > sheet.Height - TitleBlock.Margin - TitleBlock.Depth - UnderRows)
            {
                continue;
            }

            bool chosen = style == platform.Plan.Spec.Face.Edge;
            y += Row;
            sheet.Text(style.ToString().ToLowerInvariant() + (chosen ? ", chosen" : ""), new(left, y), chosen ? HouseStyle.Strong : HouseStyle.Label);
            foreach (var row in rows)
            {
                y += Row - 0.9;
                sheet.Text(row.Vehicle, new(left + 2, y),
                    TitleBlock.Fitting(row.Vehicle, HouseStyle.Small with { Colour = HouseStyle.Ink }, columns[0] - left - 9));
                Cell(sheet, columns[0], y, Figures.Mm(row.Least));
                Cell(sheet, columns[1], y, Figures.Mm(row.Mean));
                Cell(sheet, columns[2], y, Figures.Mm(row.Largest));
                sheet.Text(row.HorizontalWithinLimit ? "kept" : "over", new(columns[3], y),
                    row.HorizontalWithinLimit ? HouseStyle.Small : HouseStyle.Small with { Colour = HouseStyle.Accent, Bold = true }, TextAnchor.End);
            }
        }

        string note = Invariant($"limit: {SteppingLimit.Horizontal} mm level at full size, {Figures.Mm(dossier.Scale.ToModel(SteppingLimit.Horizontal))} here");
        sheet.Text(note, new(left, y + Row), TitleBlock.Fitting(note, HouseStyle.Small, width));
        if (platform.Plan.Profile.HasRamps)
        {
            const string Level = "without ramps, from which nobody boards; the plot has them";
            sheet.Text(Level, new(left, y + Row + 3.6), TitleBlock.Fitting(Level, HouseStyle.Small, width));
        }
    }

    private static void Cell(Sheet sheet, double right, double y, string text) =>
        sheet.Text(text, new(right, y), HouseStyle.Small with { Colour = HouseStyle.Ink }, TextAnchor.End);
}
