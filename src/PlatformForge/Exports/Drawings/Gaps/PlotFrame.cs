using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Geometry;
using PlatformForge.Units;

namespace PlatformForge.Exports.Drawings.Gaps;

/// <summary>A plot's frame on a sheet: figures to places, axes with round steps.</summary>
internal sealed record PlotFrame(double Left, double Top, double Width, double Height, double LeastX, double MostX, double LeastY, double MostY)
{
    private const double Tick = 1.4;
    private const double StepApart = 9; // mm of paper between two figures of the upright axis

    public double Right => Left + Width;

    public double Bottom => Top + Height;

    public double X(double value) => Left + (Width * (value - LeastX) / (MostX - LeastX));

    public double Y(double value) => Bottom - (Height * (Math.Clamp(value, LeastY, MostY) - LeastY) / (MostY - LeastY));

    public Point2 Of(double x, double y) => new(X(x), Y(y));

    public void Grid(Sheet sheet)
    {
        foreach (double y in Steps(LeastY, MostY, Height))
        {
            sheet.Line(new(Left, Y(y)), new(Right, Y(y)), HouseStyle.Hairline);
        }
    }

    /// <summary>Frame, and figures at the left.</summary>
    public void LeftAxis(Sheet sheet, string title)
    {
        double step = Step(LeastY, MostY, Height);
        int digits = step < 0.1 ? 2 : step < 1 ? 1 : 0;
        foreach (double y in Steps(LeastY, MostY, Height))
        {
            sheet.Line(new(Left - Tick, Y(y)), new(Left, Y(y)), HouseStyle.Thin);
            sheet.Text(Figures.Fixed(y, digits), new(Left - Tick - 0.8, Y(y) + 0.8), HouseStyle.Small, TextAnchor.End);
        }

        sheet.Box(Left, Top, Width, Height, null, HouseStyle.Outline);
        sheet.Text(title, new(Left - 10.5, Top + (Height / 2)), HouseStyle.Label, TextAnchor.Middle, -90);
    }

    /// <summary>Frame, figures at the left in mm and at the right at full size.</summary>
    public void Axes(Sheet sheet, double ratio, string title)
    {
        LeftAxis(sheet, title + ", mm");
        foreach (double full in Steps(LeastY * ratio, MostY * ratio, Height))
        {
            sheet.Line(new(Right, Y(full / ratio)), new(Right + Tick, Y(full / ratio)), HouseStyle.Thin);
            sheet.Text(Figures.Fixed(full, 0), new(Right + Tick + 0.8, Y(full / ratio) + 0.8), HouseStyle.Small);
        }

        sheet.Text("full size, mm", new(Right + 11.5, Top + (Height / 2)), HouseStyle.Label, TextAnchor.Middle, -90);
    }

    /// <summary>Figures along the level axis.</summary>
    public void Chainages(Sheet sheet, bool words)
    {
        foreach (double x in Steps(LeastX, MostX, Width / 2))
        {
            sheet.Line(new(X(x), Bottom), new(X(x), Bottom + Tick), HouseStyle.Thin);
            if (words)
            {
                sheet.Text(Figures.Fixed(x, 0), new(X(x), Bottom + Tick + 2.6), HouseStyle.Small, TextAnchor.Middle);
            }
        }
    }

    private static IEnumerable<double> Steps(double from, double to, double room)
    {
        double step = Step(from, to, room);
        int first = (int)Math.Ceiling((from / step) - Tolerances.WholeQuotient), last = (int)Math.Floor((to / step) + Tolerances.WholeQuotient);
        return Enumerable.Range(first, Math.Max(0, last - first + 1)).Select(i => i * step);
    }

    private static double Step(double from, double to, double room)
    {
        double rough = (to - from) * StepApart / room, power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        return power * (rough / power is var r && r <= 1 ? 1 : r <= 2 ? 2 : r <= 5 ? 5 : 10);
    }
}
