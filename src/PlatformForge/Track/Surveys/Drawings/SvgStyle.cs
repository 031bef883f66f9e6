using System.Text.RegularExpressions;
using System.Xml;

namespace PlatformForge.Track.Surveys.Drawings;

/// <summary>The transform of an SVG element: that of its style goes before its attribute, as in CSS (CSS Transforms 1, section 7).</summary>
internal static partial class SvgStyle
{
    // Longer than the name of any property, blanks before it included.
    private const int LongestName = 200;

    /// <summary>Reads both; throws where the style moves the element in a way that is not read.</summary>
    public static SvgTransform TransformOf(XmlReader element)
    {
        string? style = null;
        var list = (element.GetAttribute("style") ?? "").AsSpan();
        foreach (var part in list.Split(';'))
        {
            var declaration = list[part];
            int colon = declaration.IndexOf(':');
            string name = colon is < 0 or > LongestName ? "" : declaration[..colon].Trim().ToString().ToLowerInvariant();
            style = name == "transform" ? declaration[(colon + 1)..].Trim().ToString() : style;
            Refuse(name is "transform-origin" or "transform-box" or "translate" or "rotate" or "scale" or "offset-path", name);
        }

        Refuse(element.GetAttribute("transform-origin") is not null, "transform-origin");
        return style is null ? element.GetAttribute("transform") is { } own ? SvgTransform.Read(own) : SvgTransform.None
            : style.Equals("none", StringComparison.OrdinalIgnoreCase) ? SvgTransform.None
            : SvgTransform.Read(Plain(style));
    }

    private static void Refuse(bool there, string name)
    {
        if (there)
        {
            throw new UnreadableDrawingException($"An element is moved by '{name}', which is not read; apply transforms to the paths in the drawing program.");
        }
    }

    // In a style, lengths are in px and angles in deg, which are the units that an attribute leaves out.
    private static string Plain(string style)
    {
        string plain = Units().Replace(style, "");
        return Unit().IsMatch(plain)
            ? throw new UnreadableDrawingException("A transform of a style has units other than px and deg.")
            : plain;
    }

    [GeneratedRegex("(?<=[0-9.])(px|deg)(?![A-Za-z])", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Units();

    [GeneratedRegex("[0-9.](?![eE][-+]?[0-9])[A-Za-z%]", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Unit();
}
