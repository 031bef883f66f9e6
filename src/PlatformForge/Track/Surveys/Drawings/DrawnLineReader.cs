using PlatformForge.Geometry;
using PlatformForge.Track.Surveys.Tables;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys.Drawings;

/// <summary>Takes one line out of a drawing and makes it into places on the track, in millimetres.</summary>
internal static class DrawnLineReader
{
    /// <summary>Places are taken along a drawn curve this far apart, mm, at least <see cref="FewestPlaces"/> of them; farther apart on
    /// long lines, so that each can be held against the line by itself, but never farther than <see cref="WidestSpacing"/>.</summary>
    public const double Spacing = 10, WidestSpacing = 40;

    private const int FewestPlaces = 24;

    private const int MostPlaces = 20_000;

    // A calibration line that wanders by more than this part of its length is no straight line.
    private const double Straightness = 1e-3;

    // A polyline that nowhere turns by more than this at a point is points placed along a curve, not straight pieces.
    private const double PlacedTurn = 20 * Math.PI / 180;

    public static IReadOnlyList<PlaceReading> Read(DrawingSpec spec, SurveySource source, List<Finding> findings)
    {
        Finding At(Finding finding, int line = 1) => finding with { File = source.File, Line = line };
        if (PlainText.Fault(source.Text) is { } unfit)
        {
            findings.Add(At(Finding.Error("PF2101", spec.Key, unfit, "Save the plan as SVG or as an ASCII DXF."), 1));
            return [];
        }

        try
        {
            var drawing = spec.Format == DrawingFormat.Svg ? SvgDrawingReader.Read(source.Text) : DxfDrawingReader.Read(source.Text);
            if (drawing.Skipped.Count > 0)
            {
                string list = string.Join(", ", drawing.Skipped.Select(s => Invariant($"{s.Value} {TableNumber.Shown(s.Key)}")));
                findings.Add(At(Finding.Note("PF2115", spec.Key, $"Not read from the drawing: {list}.")));
            }

            foreach (string remark in drawing.Remarks)
            {
                findings.Add(At(Finding.Note("PF2132", spec.Key, remark)));
            }

            var line = Choose(spec, drawing, (f, at) => findings.Add(At(f, at)));
            double? scale = Scale(spec, drawing, (f, at) => findings.Add(At(f, at)));
            return line is null || scale is not { } unit ? [] : Places(spec, source, line, unit, f => findings.Add(At(f, line.Line)));
        }
        catch (UnreadableDrawingException fault)
        {
            findings.Add(At(Finding.Error("PF2112", spec.Key, fault.Message, "Save the plan again as plain SVG or ASCII DXF."), Math.Max(1, fault.Line)));
            return [];
        }
    }

    private static DrawnPiece? Choose(DrawingSpec spec, Drawing drawing, Action<Finding, int> fault)
    {
        string what = spec.Format == DrawingFormat.Svg ? "id" : "layer";
        string calibration = spec.Calibration?.Element ?? "";
        var named = drawing.Pieces.Select(p => (Name: p.Names.FirstOrDefault(""), p.Line)).Where(n => n.Name.Length > 0 && n.Name != calibration).DistinctBy(n => n.Name, StringComparer.Ordinal).Take(12).ToArray();
        string known = named.Length == 0 ? "no line has a name" : "there " + (named.Length == 1 ? "is " : "are ") + string.Join(", ", named.Select(n => Invariant($"'{TableNumber.Shown(n.Name)}' (line {n.Line})")));
        if (drawing.Pieces.Count == 0)
        {
            fault(Finding.Error("PF2114", spec.Key, "The drawing holds no line that could be a track.", "Draw the track as a path, polyline or arcs, not as text, images or blocks."),
                1);
            return null;
        }

        var pieces = spec.Element is { } wanted
            ? drawing.Pieces.Where(p => p.Names.Contains(wanted, StringComparer.Ordinal)).ToList()
            : drawing.Pieces.Where(p => calibration.Length == 0 || !p.Names.Contains(calibration, StringComparer.Ordinal)).ToList();
        if (pieces.Count == 0)
        {
            fault(Finding.Error("PF2113", spec.Key, $"No line has the {what} '{spec.Element}'; {known}.", $"Give the {what} of the track's line, such as element = \"{(named.Length > 0 ? Nearest(spec.Element ?? "", named.Select(n => n.Name)) : "up")}\"."),
                named.Length > 0 ? named[0].Line : 1);
            return null;
        }

        // Lines that meet end to end on several layers are a turnout as often as one track.
        string[] own = [.. pieces.Select(p => p.Names.FirstOrDefault("")).Distinct(StringComparer.Ordinal)];
        if (spec.Element is null && own.Length > 1)
        {
            int names = own.Count(n => n.Length > 0);
            fault(Finding.Error("PF2113", spec.Key, Invariant($"The drawing has lines of {names} {what}{(names == 1 ? "" : "s")}{(names < own.Length ? " and some of none" : "")}; {known}."), $"Say which one is the track by its {what}, such as element = \"{named[0].Name}\"; {(what == "id" ? "put the pieces of one track into a group and give its id" : "put the pieces of one track on one layer")}."),
                pieces.First(p => p.Names.FirstOrDefault("") != own[0]).Line);
            return null;
        }

        var lines = PieceJoiner.Join(pieces);
        if (lines.Count == 1)
        {
            return spec.Reverse ? lines[0].Reversed() : lines[0];
        }

        string which = spec.Element is { } element ? $"'{TableNumber.Shown(element)}' is drawn" : own[0].Length > 0 ? $"'{TableNumber.Shown(own[0])}' is drawn" : "The track is drawn";
        double unit = drawing.MillimetresPerUnit ?? spec.Unit?.Millimetres() ?? 1;
        string sign = drawing.MillimetresPerUnit is null && spec.Unit is null ? "units" : "mm";
        var (from, to, branches, at) = PieceJoiner.Gap(lines, PieceJoiner.Nearness * PieceJoiner.Size(pieces));
        fault(branches
            ? Finding.Error("PF2113", spec.Key,
                Invariant($"{which} in {lines.Count} lines: one branches off another at {to.X * unit:0.##}, {to.Y * unit:0.##} {sign}."),
                $"Put the branch on {(what == "id" ? "an id" : "a layer")} of its own, and name the track's own with element.")
            : Finding.Error("PF2113", spec.Key, Invariant($"{which} in {lines.Count} lines that do not meet end to end: there is a gap of {(to - from).Length * unit:0.###} {sign} from {from.X * unit:0.##}, {from.Y * unit:0.##} to {to.X * unit:0.##}, {to.Y * unit:0.##} {sign}."), Invariant($"Draw both ends onto one point (within {PieceJoiner.Nearness * PieceJoiner.Size(pieces) * unit:0.###} {sign}); lines that are not this track need {(what == "id" ? "an id" : "a layer")} of their own, and the track's own named with element.")), lines[at].Line);
        return null;
    }

    /// <summary>The name that begins most like the one asked for.</summary>
    private static string Nearest(string wanted, IEnumerable<string> names) =>
        names.MaxBy(n => n.Zip(wanted).TakeWhile(p => char.ToUpperInvariant(p.First) == char.ToUpperInvariant(p.Second)).Count())!;

    private static double? Scale(DrawingSpec spec, Drawing drawing, Action<Finding, int> fault)
    {
        if (spec.Calibration is { } calibration)
        {
            var lines = PieceJoiner.Join([.. drawing.Pieces.Where(p => p.Names.Contains(calibration.Element, StringComparer.Ordinal))]);
            if (lines.Count == 0)
            {
                fault(Finding.Error("PF2116", $"{spec.Key}.calibrate", $"No line named '{TableNumber.Shown(calibration.Element)}' that has a length is drawn to calibrate by.", "Draw one straight line of known length and give it that name."),
                    1);
                return null;
            }

            if (lines.Count > 1)
            {
                fault(Finding.Error("PF2116", $"{spec.Key}.calibrate", Invariant($"There are {lines.Count} lines named '{calibration.Element}' to calibrate by."), "Draw one straight line of known length and give it that name."),
                    lines[1].Line);
                return null;
            }

            double drawn = (lines[0].Points[^1] - lines[0].Points[0]).Length;
            if (!(lines[0].Length <= drawn * (1 + Straightness)) || !(calibration.Length > 0) || !double.IsFinite(calibration.Length))
            {
                fault(Finding.Error("PF2116", $"{spec.Key}.calibrate", Invariant($"The line '{calibration.Element}' of {calibration.Length:0.##} mm is not straight, or has no length."), "Draw one straight line of known length, and give its length in mm, over 0."),
                    lines[0].Line);
                return null;
            }

            double scale = calibration.Length / drawn;
            if (drawing.MillimetresPerUnit is null && spec.Unit is { } given && Math.Abs((given.Millimetres() / scale) - 1) > Straightness)
            {
                fault(Finding.Warning("PF2116", $"{spec.Key}.calibrate", Invariant($"The calibration line gives {scale:G5} mm to the unit, but unit = \"{given.Sign()}\" is given."), "The line of known length is believed.", FaultKind.Input),
                    lines[0].Line);
            }

            if (drawing.MillimetresPerUnit is { } stated && Math.Abs((stated / scale) - 1) > Straightness)
            {
                fault(Finding.Warning("PF2116", $"{spec.Key}.calibrate", Invariant($"The calibration line gives {scale:G5} mm to the unit, but {drawing.UnitTold}."), "The line of known length is believed.", FaultKind.Input),
                    lines[0].Line);
            }

            return scale;
        }

        if ((drawing.MillimetresPerUnit ?? spec.Unit?.Millimetres()) is { } known)
        {
            if (spec.Unit is { } given && Math.Abs((given.Millimetres() / known) - 1) > Straightness)
            {
                fault(Finding.Warning("PF2147", spec.Key, $"The project file gives unit = \"{given.Sign()}\", but {drawing.UnitTold}.", "The drawing is believed. Leave the unit out; where the drawing is wrong, draw a line of known length and give calibrate.", FaultKind.Input),
                    drawing.UnitLine);
            }

            return known;
        }

        fault(Finding.Error("PF2111", spec.Key, $"The drawing does not say how long its unit is: {drawing.UnitTold}.", "Give unit = \"mm\" (or cm, in), or draw a line of known length and give calibrate = { length = 300, element = \"calibration\" }: its length in mm and what it is called in the drawing."),
            drawing.UnitLine);
        return null;
    }

    private static IReadOnlyList<PlaceReading> Places(DrawingSpec spec, SurveySource source, DrawnPiece line, double scale, Action<Finding> fault)
    {
        Point2[] points = [.. line.Points.Select(p => p * scale)];
        double length = line.Length * scale;
        if (!(length > 0 && length <= SurveyTable.Longest))
        {
            fault(Finding.Error("PF2114", spec.Key, double.IsFinite(length) ? Invariant($"The line is {length:G4} mm long; at most {SurveyTable.Longest:0} mm is taken.") : "The line is too long to be reckoned with.", "Check the scale of the drawing."));
            return [];
        }

        if (line.Straights && points.Length >= RunRule.FewestPlaces && SharpestTurn(points) <= PlacedTurn)
        {
            fault(Finding.Note("PF2125", spec.Key, Invariant($"The line is drawn with {points.Length} points; they are taken for places on a curve.")));
        }
        else
        {
            points = Spread(points, length);
        }

        return [.. points.Select((p, i) => new PlaceReading(source.File, i + 1, LengthUnit.Millimetre, p, source.Measured.FromCentre) { DrawnAt = line.Line })];
    }

    private static double SharpestTurn(Point2[] points)
    {
        double sharpest = 0;
        for (int i = 2; i < points.Length; i++)
        {
            Point2 a = points[i - 1] - points[i - 2], b = points[i] - points[i - 1];
            sharpest = Math.Max(sharpest, Math.Abs(Math.Atan2(Point2.Cross(a, b), Point2.Dot(a, b))));
        }

        return sharpest;
    }

    /// <summary>Points at even distances along a polyline.</summary>
    private static Point2[] Spread(Point2[] line, double length)
    {
        int steps = (int)Math.Clamp(Math.Ceiling(Math.Min(length / Spacing, Math.Max(Fitting.PlaceFitter.MostSingle - 1, length / WidestSpacing))), FewestPlaces, MostPlaces);
        var points = new Point2[steps + 1];
        int at = 1;
        double passed = 0, step = (line[1] - line[0]).Length;
        for (int i = 0; i <= steps; i++)
        {
            double want = length * i / steps;
            while (at < line.Length - 1 && passed + step < want)
            {
                passed += step;
                at++;
                step = (line[at] - line[at - 1]).Length;
            }

            points[i] = line[at - 1] + ((line[at] - line[at - 1]) * Math.Min(1, (want - passed) / step));
        }

        return points;
    }
}
