using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Tables;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys.Drawings;

/// <summary>How many millimetres a drawing's unit is: by a line of known length, otherwise as the drawing or the project file says.</summary>
internal static class DrawingScale
{
    // A calibration line that wanders by more than this part of its length is no straight line.
    private const double Straightness = 1e-3;

    /// <summary>Millimetres to the unit; null, and told, where they cannot be known.</summary>
    /// <param name="spec">What is said of the drawing.</param>
    /// <param name="drawing">The drawing.</param>
    /// <param name="fault">Receives what is wrong, with its line in the file.</param>
    public static double? Of(DrawingSpec spec, Drawing drawing, Action<Finding, int> fault)
    {
        if (spec.Calibration is { } calibration)
        {
            return ByLine(spec, calibration, drawing, fault);
        }

        if ((drawing.MillimetresPerUnit ?? spec.Unit?.Millimetres()) is { } known)
        {
            if (spec.Unit is { } given && Math.Abs((given.Millimetres() / known) - 1) > Straightness)
            {
                string remedy = "The drawing is believed. Leave the unit out; where the drawing is wrong, draw a line of known length and give calibrate.";
                string message = $"The project file gives unit = \"{given.Sign()}\", but {drawing.UnitTold}.";
                fault(Finding.Warning("PF2147", spec.Key, message, remedy, FaultKind.Input), drawing.UnitLine);
            }

            return known;
        }

        fault(Finding.Error("PF2111", spec.Key, $"The drawing does not say how long its unit is: {drawing.UnitTold}.",
            "Give unit = \"mm\" (or cm, in), or draw a line of known length and give calibrate = { length = 300, element = \"calibration\" }: "
                + "its length in mm and what it is called in the drawing."),
            drawing.UnitLine);
        return null;
    }

    private static double? ByLine(DrawingSpec spec, Calibration calibration, Drawing drawing, Action<Finding, int> fault)
    {
        if (TheOne(spec, calibration, drawing, fault) is not { } line)
        {
            return null;
        }

        double drawn = (line.Points[^1] - line.Points[0]).Length;
        if (!(line.Length <= drawn * (1 + Straightness)) || !(calibration.Length > 0) || !double.IsFinite(calibration.Length))
        {
            string message = Invariant($"The line '{calibration.Element}' of {calibration.Length:0.##} mm is not straight, or has no length.");
            const string Remedy = "Draw one straight line of known length, and give its length in mm, over 0.";
            fault(Finding.Error("PF2116", $"{spec.Key}.calibrate", message, Remedy), line.Line);
            return null;
        }

        double scale = calibration.Length / drawn;
        if (drawing.MillimetresPerUnit is null && spec.Unit is { } given && Math.Abs((given.Millimetres() / scale) - 1) > Straightness)
        {
            AtOdds($"unit = \"{given.Sign()}\" is given");
        }

        if (drawing.MillimetresPerUnit is { } stated && Math.Abs((stated / scale) - 1) > Straightness)
        {
            AtOdds(drawing.UnitTold);
        }

        return scale;

        void AtOdds(string other) => fault(
            Finding.Warning("PF2116", $"{spec.Key}.calibrate", Invariant($"The calibration line gives {scale:G5} mm to the unit, but {other}."),
                "The line of known length is believed.", FaultKind.Input),
            line.Line);
    }

    // The line that is named to calibrate by, if there is one and no other.
    private static DrawnPiece? TheOne(DrawingSpec spec, Calibration calibration, Drawing drawing, Action<Finding, int> fault)
    {
        const string Remedy = "Draw one straight line of known length and give it that name.";
        var lines = PieceJoiner.Join([.. drawing.Pieces.Where(p => p.Names.Contains(calibration.Element, StringComparer.Ordinal))]);
        if (lines.Count == 0)
        {
            string none = $"No line named '{TableNumber.Shown(calibration.Element)}' that has a length is drawn to calibrate by.";
            fault(Finding.Error("PF2116", $"{spec.Key}.calibrate", none, Remedy), 1);
            return null;
        }

        if (lines.Count > 1)
        {
            string several = Invariant($"There are {lines.Count} lines named '{calibration.Element}' to calibrate by.");
            fault(Finding.Error("PF2116", $"{spec.Key}.calibrate", several, Remedy), lines[1].Line);
            return null;
        }

        return lines[0];
    }
}
