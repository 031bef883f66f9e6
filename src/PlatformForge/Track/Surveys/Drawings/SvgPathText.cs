using System.Globalization;

namespace PlatformForge.Track.Surveys.Drawings;

/// <summary>A cursor over the data of an SVG path: command letters, numbers and the one-digit flags of arcs (SVG 2, section 9.3).</summary>
internal ref struct SvgPathText(ReadOnlySpan<char> text)
{
    private readonly ReadOnlySpan<char> text = text;
    private int at = 0;

    /// <summary>The next command letter, or null where a number or the end comes.</summary>
    public char? Command()
    {
        Skip();
        return at < text.Length && char.IsAsciiLetter(text[at]) ? text[at++] : null;
    }

    public bool AtEnd()
    {
        Skip();
        return at >= text.Length;
    }

    public bool AtNumber()
    {
        Skip();
        return at < text.Length && (char.IsAsciiDigit(text[at]) || text[at] is '+' or '-' or '.');
    }

    public double Number()
    {
        Skip();
        int start = at;
        if (at < text.Length && text[at] is '+' or '-')
        {
            at++;
        }

        Digits();
        if (at < text.Length && text[at] == '.')
        {
            at++;
            Digits();
        }

        if (at < text.Length && text[at] is 'e' or 'E')
        {
            int mark = at++;
            if (at < text.Length && text[at] is '+' or '-')
            {
                at++;
            }

            int digits = at;
            Digits();
            if (digits == at)
            {
                at = mark;
            }
        }

        return double.TryParse(text[start..at], NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && DrawingBudget.Holds(value)
            ? value
            : throw new UnreadableDrawingException("The path's data has no number where one belongs, or one "
            + FormattableString.Invariant($"beyond {Units.InputLimits.DrawingCoordinate:0}."));
    }

    public bool Flag()
    {
        Skip();
        return at < text.Length && text[at] is '0' or '1'
            ? text[at++] == '1'
            : throw new UnreadableDrawingException("An arc of the path has a flag other than 0 and 1.");
    }

    private void Digits()
    {
        while (at < text.Length && char.IsAsciiDigit(text[at]))
        {
            at++;
        }
    }

    private void Skip()
    {
        while (at < text.Length && (char.IsWhiteSpace(text[at]) || text[at] == ','))
        {
            at++;
        }
    }
}
