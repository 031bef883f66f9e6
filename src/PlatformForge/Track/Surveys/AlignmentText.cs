using System.Globalization;
using System.Text;
using PlatformForge.Track.Surveys.Results;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys;

/// <summary>A fitted line as an alignment, and as text that can be pasted into a project file.</summary>
public static class AlignmentText
{
    /// <summary>The alignment of a line, or null where a list of elements cannot say it.</summary>
    public static AlignmentSpec? Recognised(string name, Centreline line, string key = "track")
    {
        var elements = new List<AlignmentElementSpec>();
        double curvature = 0;
        for (int i = 0; i < line.Elements.Count; i++)
        {
            var e = line.Elements[i];
            double turn = i == 0 ? 0 : Math.IEEERemainder(e.Heading - line.Elements[i - 1].HeadingAt(line.Elements[i - 1].Length), 2 * Math.PI);
            if (Math.Abs(turn) * 180 / Math.PI >= NumberRange.Smallest)
            {
                elements.Add(new KinkSpec(Math.Abs(turn), turn > 0 ? Hand.Left : Hand.Right));
            }

            double start = StraightRule.Told(e.StartCurvature), end = StraightRule.Told(e.EndCurvature);
            if (start == 0 && end == 0)
            {
                elements.Add(new StraightSpec(e.Length));
            }
            else if (start == end)
            {
                elements.Add(new CurveSpec(1 / Math.Abs(start), HandOf(start), Length: e.Length));
            }
            else if (Math.Abs(e.StartCurvature - curvature) > LeastStep)
            {
                // A transition goes on from the curvature reached so far; one that begins elsewhere has no words in a project file.
                return null;
            }
            else
            {
                elements.Add(new TransitionSpec(e.Length, end == 0 ? null : 1 / Math.Abs(end), HandOf(end == 0 ? start : end)));
            }

            curvature = e.EndCurvature;
        }

        return new(name, line.Elements[0].Start, line.Elements[0].Heading, elements, key);
    }

    // Curvatures nearer to one another than this, 1/mm, are the same: 0.0005 mm over a metre.
    private const double LeastStep = 1e-9;

    /// <summary>
    /// The table of a surveyed track as a project file writes it, with what the survey left uncertain, so that the budget of a
    /// platform is no smaller with the text than with the survey.
    /// </summary>
    /// <param name="track">A track whose alignment was recognised.</param>
    public static string Toml(SurveyedTrack track)
    {
        var text = new StringBuilder(Toml(track.Alignment ?? throw new ArgumentException("The track has no alignment.", nameof(track))));
        double doubt = Math.Ceiling(track.StatedDoubt * DoubtParts) / DoubtParts;
        text.Append(CultureInfo.InvariantCulture,
            $"# What measuring left uncertain: vehicles on the true track reach as far as if it lay within {doubt:0.00} mm of this "
                + $"one {(track.Doubts.Count > 0 ? "beside the platforms" : "throughout")}.\n");
        text.Append("# It goes into the clearance budget, multiplied for overhangs; leave it with the alignment.\n");
        foreach (var reach in track.Doubts)
        {
            text.Append(CultureInfo.InvariantCulture,
                $"# Beside {Comment(reach.Platform)} the survey found {reach.Most:0.00} mm at most for the reach of {Comment(reach.Vehicle)}.\n");
        }

        return text.Append(CultureInfo.InvariantCulture, $"survey_doubt = {doubt:0.00}\n").ToString();
    }

    // The doubt is written to a hundredth, rounded up.
    private const double DoubtParts = 100;

    // A name may not end the comment it stands in.
    private static string Comment(string name) => string.Concat(name.Where(c => !char.IsControl(c)));

    /// <summary>
    /// The table of a track as a project file writes it: lengths and radii to 0.01 mm, angles to 0.0001 degrees, which moves the
    /// far end of a two-metre track by some hundredths of a millimetre.
    /// </summary>
    public static string Toml(AlignmentSpec alignment)
    {
        var text = new StringBuilder();
        text.Append("[[track]]\n");
        text.Append(CultureInfo.InvariantCulture,
            $"name = \"{alignment.Name.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"\n");
        text.Append(CultureInfo.InvariantCulture,
            $"start = {{ x = {alignment.Start.X:0.###}, y = {alignment.Start.Y:0.###}, heading = {Degrees(alignment.Heading)} }}\n");
        text.Append("alignment = [\n");
        foreach (var element in alignment.Elements)
        {
            text.Append("  { ").Append(Element(element)).Append(" },\n");
        }

        return text.Append("]\n").ToString();
    }

    private static string Element(AlignmentElementSpec element) => element switch
    {
        StraightSpec s => Invariant($"straight = {s.Length:0.##}"),
        CurveSpec c => Invariant($"curve = {c.Radius:0.##}, length = {c.Length ?? (c.Radius * (c.Angle ?? 0)):0.##}, hand = \"{Word(c.Hand)}\""),
        TransitionSpec { ToRadius: { } radius } t => Invariant($"transition = {t.Length:0.##}, to_radius = {radius:0.##}, hand = \"{Word(t.Hand)}\""),
        TransitionSpec t => Invariant($"transition = {t.Length:0.##}"),
        KinkSpec k => Invariant($"kink = {Degrees(k.Turn)}, hand = \"{Word(k.Hand)}\""),
        _ => throw new ArgumentOutOfRangeException(nameof(element), element.GetType().Name),
    };

    private static string Degrees(double radians) => (radians * 180 / Math.PI).ToString("0.####", CultureInfo.InvariantCulture);

    private static string Word(Hand hand) => hand == Hand.Left ? "left" : "right";

    private static Hand HandOf(double curvature) => curvature >= 0 ? Hand.Left : Hand.Right;
}
