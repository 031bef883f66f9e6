using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Track.Surveys.Results;
using static System.FormattableString;

namespace PlatformForge.Exports.Surveys;

/// <summary>The figures beside the plots: what the line is made of, its sharpest place, how good it is, and the key.</summary>
internal sealed class SurveyColumn(SurveyedTrack track, double left, double top, double width)
{
    private const double Line = 4.6;
    private const int MostElements = 16, MostDoubts = 3;

    private double y = top;

    public void DrawOn(Sheet sheet)
    {
        Head(sheet, "What the line is made of");
        foreach (var e in track.Elements.Take(MostElements))
        {
            sheet.Text(Invariant($"{e.From:0}"), new(left + 9, y), HouseStyle.Small, TextAnchor.End);
            sheet.Text(SurveyPlan.Name(e), new(left + 13, y), HouseStyle.Label);
            sheet.Text(Invariant($"{e.To - e.From:0.0} mm"), new(left + width, y), HouseStyle.Label, TextAnchor.End);
            y += Line;
        }

        if (track.Elements.Count > MostElements)
        {
            Say(sheet, Invariant($"and {track.Elements.Count - MostElements} more"));
        }

        y += 3;
        Head(sheet, "How good it is");
        Pair(sheet, "readings", Invariant($"{track.Residuals.Count}"));
        Pair(sheet, "left out as misread", Invariant($"{track.Outliers.Count()}"));
        if (track.Doubted.Count > 0)
        {
            Pair(sheet, "in doubt", Invariant($"{track.Doubted.Count}"));
        }

        Pair(sheet, "scatter about the line", Invariant($"{Figures.Fine(track.Scatter)} mm"));
        Pair(sheet, "ruler error", Invariant($"{Figures.Fine(track.RulerError)} mm"));
        Pair(sheet, "the line may be off by", Invariant($"{Figures.Fine(Middle())} mm"));
        Pair(sheet, "at most, at the ends", Invariant($"{Figures.Fine(track.Movement.Likely.Max())} mm"));
        Pair(sheet, "all at worst, same elements", AtWorst(track.Movement.Likely.Max(), track.Movement.Worst.Max()));
        Pair(sheet, "least radius", track.LeastRadius is { } r ? Invariant($"{Figures.Mm(r.Radius)} mm") : "straight");
        if (track.LeastRadius is { } at)
        {
            Pair(sheet, "at chainage", Invariant($"{at.Chainage:0}"));
        }

        Doubts(sheet);
        y += 3;
        Key(sheet);
    }

    /// <summary>The bound over the middle eight tenths of the track, where platforms stand.</summary>
    private double Middle() => track.Movement.Most(0.1 * track.Line.Length, 0.9 * track.Line.Length);

    private void Doubts(Sheet sheet)
    {
        if (track.Doubts.Count == 0)
        {
            return;
        }

        y += 3;
        Head(sheet, "What it means for the gap");
        foreach (var doubt in track.Doubts.Take(MostDoubts))
        {
            Pair(sheet, Short(doubt.Platform, 24) + ": at most", Invariant($"{Figures.Fine(doubt.Most)} mm"));
            Pair(sheet, "half of it under", Invariant($"{Figures.Fine(doubt.Median)} mm"));
            Say(sheet, "most for " + Short(doubt.Vehicle, 34));
        }
    }

    // The worst is never told below the likely figure, so that one as large says nothing of its own.
    private static string AtWorst(double likely, double worst) => Figures.Fine(worst) == Figures.Fine(likely) ? "no further"
        : Invariant($"{Figures.Fine(worst)} mm");

    private static string Short(string words, int most) => words.Length <= most ? words : words[..(most - 1)] + "…";

    private void Key(Sheet sheet)
    {
        Head(sheet, "Key");
        sheet.Circle(new(left + 4, y - 0.9), 0.9, new(HouseStyle.Ink));
        Say(sheet, "a reading", 12);
        var pen = new Pen(0.5, HouseStyle.Accent);
        sheet.Line(new(left + 2.8, y - 2.1), new(left + 5.2, y + 0.3), pen);
        sheet.Line(new(left + 2.8, y + 0.3), new(left + 5.2, y - 2.1), pen);
        Say(sheet, "a reading left out as misread", 12);
        if (track.Doubted.Count > 0)
        {
            sheet.Circle(new(left + 4, y - 0.9), 0.9, new(HouseStyle.Ink));
            sheet.Circle(new(left + 4, y - 0.9), 2, null, new(0.4, HouseStyle.Accent));
            Say(sheet, "a reading in doubt", 12);
        }

        if (track.Versines.Count == 0)
        {
            sheet.Box(left + 0.5, y - 2.6, 7.5, 3, new(HouseStyle.Swept, 0.14), new(0.3, HouseStyle.Swept));
            Say(sheet, "where the true line may lie", 12);
        }

        sheet.Line(new(left + 0.5, y - 0.9), new(left + 8, y - 0.9), HouseStyle.Hidden);
        Say(sheet, "ruler error", 12);
    }

    private void Head(Sheet sheet, string words)
    {
        sheet.Text(words, new(left, y), HouseStyle.Subheading);
        sheet.Line(new(left, y + 1.4), new(left + width, y + 1.4), HouseStyle.Thin);
        y += 6.4;
    }

    private void Pair(Sheet sheet, string words, string figure)
    {
        sheet.Text(words, new(left, y), HouseStyle.Label);
        sheet.Text(figure, new(left + width, y), HouseStyle.Strong, TextAnchor.End);
        y += Line;
    }

    private void Say(Sheet sheet, string words, double indent = 0)
    {
        sheet.Text(words, new(left + indent, y), HouseStyle.Label);
        y += Line;
    }
}
