using PlatformForge.Exports.Files;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Ink;

/// <summary>The frame and the strip along the bottom that every drawing has: whose it is, what it is, to what scale, and the caution.</summary>
internal static class TitleBlock
{
    public const double Margin = 7;
    public const double Depth = 19;

    /// <summary>Room between the paper's edge and what is drawn.</summary>
    public const double Inset = 14;

    /// <summary>What every drawing warns of.</summary>
    public const string Caution = "For model railways only. Push every vehicle through by hand before anything is fixed.";

    /// <summary>Draws it; <paramref name="notes"/> are two short lines at most.</summary>
    public static void Draw(Sheet sheet, Dossier dossier, string platform, string drawing, string scale, params IReadOnlyList<string> notes) => Draw(
        sheet,
        platform,
        drawing,
        scale,
        notes,
        [
            dossier.Project,
            Invariant($"Model of 1:{Figures.Short(dossier.Scale.Ratio)}, gauge {Figures.Short(dossier.Gauge)} mm"),
            Invariant($"PlatformForge {dossier.Version}, input {dossier.InputHash[..Math.Min(12, dossier.InputHash.Length)]}"),
        ]);

    /// <summary>Draws it from words: what is drawn, two notes at most, and three lines on whose it is.</summary>
    public static void Draw(Sheet sheet, string subject, string drawing, string scale, IReadOnlyList<string> notes, IReadOnlyList<string> origin)
    {
        double top = sheet.Height - Margin - Depth, right = sheet.Width - Margin;
        sheet.Box(Margin, Margin, sheet.Width - (2 * Margin), sheet.Height - (2 * Margin), null, HouseStyle.Outline);
        sheet.Line(new(Margin, top), new(right, top), HouseStyle.Outline);
        double first = Margin + ((right - Margin) * 0.36), second = Margin + ((right - Margin) * 0.66);
        sheet.Line(new(first, top), new(first, top + Depth), HouseStyle.Thin);
        sheet.Line(new(second, top), new(second, top + Depth), HouseStyle.Thin);

        double x = Margin + 4;
        sheet.Text(subject, new(x, top + 7.2), Fitting(subject, HouseStyle.Heading, first - x - 3));
        sheet.Text(drawing, new(x, top + 12), HouseStyle.Label);
        sheet.Text(Caution, new(x, top + 16.4), Fitting(Caution, HouseStyle.Small, first - x - 3));

        sheet.Text(scale, new(first + 4, top + 6.6), HouseStyle.Strong);
        for (int i = 0; i < notes.Count; i++)
        {
            sheet.Text(notes[i], new(first + 4, top + 11.2 + (4.4 * i)), Fitting(notes[i], HouseStyle.Small, second - first - 7));
        }

        for (int i = 0; i < origin.Count; i++)
        {
            sheet.Text(origin[i], new(second + 4, top + (i == 0 ? 6.6 : 6.8 + (4.4 * i))),
                Fitting(origin[i], i == 0 ? HouseStyle.Strong : HouseStyle.Small, right - second - 7));
        }
    }

    /// <summary>The style, made smaller where the words would not fit.</summary>
    public static TextStyle Fitting(string text, TextStyle style, double room)
    {
        double length = TextStyle.Length(text, style);
        return length <= room ? style : style with { Size = style.Size * room / length };
    }
}
