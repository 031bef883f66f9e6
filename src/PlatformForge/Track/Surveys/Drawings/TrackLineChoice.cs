using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Tables;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys.Drawings;

/// <summary>Which line of a drawing is the track: the one that is named, otherwise the only one.</summary>
internal sealed class TrackLineChoice
{
    // Names told of lines that are there.
    private const int NamesTold = 12;

    private readonly DrawingSpec spec;
    private readonly Drawing drawing;
    private readonly Action<Finding, int> fault;
    private readonly string what, calibration, known;
    private readonly (string Name, int Line)[] named;

    private TrackLineChoice(DrawingSpec spec, Drawing drawing, Action<Finding, int> fault)
    {
        (this.spec, this.drawing, this.fault) = (spec, drawing, fault);
        what = spec.Format == DrawingFormat.Svg ? "id" : "layer";
        calibration = spec.Calibration?.Element ?? "";
        named = [.. drawing.Pieces.Select(p => (Name: p.Names.FirstOrDefault(""), p.Line)).Where(n => n.Name.Length > 0 && n.Name != calibration)
            .DistinctBy(n => n.Name, StringComparer.Ordinal).Take(NamesTold)];
        string list = string.Join(", ", named.Select(n => Invariant($"'{TableNumber.Shown(n.Name)}' (line {n.Line})")));
        known = named.Length == 0 ? "no line has a name" : "there " + (named.Length == 1 ? "is " : "are ") + list;
    }

    /// <summary>The track's line, in the sense asked for; null, and told, where it cannot be known.</summary>
    /// <param name="spec">What is said of the drawing.</param>
    /// <param name="drawing">The drawing.</param>
    /// <param name="fault">Receives what is wrong, with its line in the file.</param>
    public static DrawnPiece? Of(DrawingSpec spec, Drawing drawing, Action<Finding, int> fault)
    {
        var choice = new TrackLineChoice(spec, drawing, fault);
        if (choice.Pieces() is not { } pieces)
        {
            return null;
        }

        var lines = PieceJoiner.Join(pieces);
        if (lines.Count == 1)
        {
            return spec.Reverse ? lines[0].Reversed() : lines[0];
        }

        choice.TellApart(pieces, lines);
        return null;
    }

    // The pieces that the track is drawn in.
    private List<DrawnPiece>? Pieces()
    {
        if (drawing.Pieces.Count == 0)
        {
            fault(Finding.Error("PF2114", spec.Key, "The drawing holds no line that could be a track.",
                "Draw the track as a path, polyline or arcs, not as text, images or blocks."), 1);
            return null;
        }

        var pieces = spec.Element is { } wanted
            ? drawing.Pieces.Where(p => p.Names.Contains(wanted, StringComparer.Ordinal)).ToList()
            : drawing.Pieces.Where(p => calibration.Length == 0 || !p.Names.Contains(calibration, StringComparer.Ordinal)).ToList();
        if (pieces.Count == 0)
        {
            string near = named.Length > 0 ? Nearest(spec.Element ?? "", named.Select(n => n.Name)) : "up";
            fault(Finding.Error("PF2113", spec.Key, $"No line has the {what} '{spec.Element}'; {known}.",
                $"Give the {what} of the track's line, such as element = \"{near}\"."), named.Length > 0 ? named[0].Line : 1);
            return null;
        }

        // Lines that meet end to end on several layers are a turnout as often as one track.
        string[] own = Names(pieces);
        if (spec.Element is null && own.Length > 1)
        {
            TellSeveral(pieces, own);
            return null;
        }

        return pieces;
    }

    private static string[] Names(List<DrawnPiece> pieces) => [.. pieces.Select(p => p.Names.FirstOrDefault("")).Distinct(StringComparer.Ordinal)];

    private void TellSeveral(List<DrawnPiece> pieces, string[] own)
    {
        int names = own.Count(n => n.Length > 0);
        string rest = names < own.Length ? " and some of none" : "";
        string together = what == "id" ? "put the pieces of one track into a group and give its id" : "put the pieces of one track on one layer";
        fault(Finding.Error("PF2113", spec.Key, Invariant($"The drawing has lines of {names} {what}{(names == 1 ? "" : "s")}{rest}; {known}."),
            $"Say which one is the track by its {what}, such as element = \"{named[0].Name}\"; {together}."),
            pieces.First(p => p.Names.FirstOrDefault("") != own[0]).Line);
    }

    // Where lines that were to be one branch, or leave a gap.
    private void TellApart(List<DrawnPiece> pieces, List<DrawnPiece> lines)
    {
        string own = Names(pieces)[0];
        string which = spec.Element is { } element ? $"'{TableNumber.Shown(element)}' is drawn"
            : own.Length > 0 ? $"'{TableNumber.Shown(own)}' is drawn" : "The track is drawn";
        double unit = drawing.MillimetresPerUnit ?? spec.Unit?.Millimetres() ?? 1, near = PieceJoiner.Nearness * PieceJoiner.Size(pieces);
        string sign = drawing.MillimetresPerUnit is null && spec.Unit is null ? "units" : "mm", apart = what == "id" ? "an id" : "a layer";
        var (from, to, branches, at) = PieceJoiner.Gap(lines, near);
        string message = Invariant($"{which} in {lines.Count} lines") + (branches
            ? Invariant($": one branches off another at {to.X * unit:0.##}, {to.Y * unit:0.##} {sign}.")
            : Invariant($" that do not meet end to end: there is a gap of {(to - from).Length * unit:0.###} {sign} from {from.X * unit:0.##}, ")
                + Invariant($"{from.Y * unit:0.##} to {to.X * unit:0.##}, {to.Y * unit:0.##} {sign}."));
        string remedy = branches
            ? $"Put the branch on {apart} of its own, and name the track's own with element."
            : Invariant($"Draw both ends onto one point (within {near * unit:0.###} {sign}); lines that are not ")
                + $"this track need {apart} of their own, and the track's own named with element.";
        fault(Finding.Error("PF2113", spec.Key, message, remedy), lines[at].Line);
    }

    /// <summary>The name that begins most like the one asked for.</summary>
    private static string Nearest(string wanted, IEnumerable<string> names) =>
        names.MaxBy(n => n.Zip(wanted).TakeWhile(p => char.ToUpperInvariant(p.First) == char.ToUpperInvariant(p.Second)).Count())!;
}
