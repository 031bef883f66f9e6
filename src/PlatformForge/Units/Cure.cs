using System.Globalization;
using System.Text;

namespace PlatformForge.Units;

/// <summary>What a cure does to the project file.</summary>
public enum CureAct
{
    /// <summary>The key takes a value.</summary>
    Set,

    /// <summary>The key, or the entry of a list, is left out.</summary>
    LeaveOut,

    /// <summary>The key gets another name and keeps its value.</summary>
    Rename,
}

/// <summary>A remedy as a machine takes it: one change of the project file, exact where the sentence beside it may be rounded.</summary>
/// <param name="Act">What it does.</param>
/// <param name="Key">The key, named as the finding's own key is.</param>
/// <param name="Value">The value as it is written in the file, the new name of the key, or an empty text.</param>
public sealed record Cure(CureAct Act, string Key, string Value)
{
    /// <summary>Whether the design was run with it: the finding is gone, and no error came that was not there.</summary>
    public bool Tried { get; init; }

    public static Cure Set(string key, double value) => new(CureAct.Set, key, value.ToString("R", CultureInfo.InvariantCulture));

    public static Cure Set(string key, bool value) => new(CureAct.Set, key, value ? "true" : "false");

    /// <summary>A text value, quoted as the file wants it.</summary>
    public static Cure Text(string key, string value) => new(CureAct.Set, key, Quoted(value));

    public static Cure LeaveOut(string key) => new(CureAct.LeaveOut, key, "");

    public static Cure Rename(string key, string name) => new(CureAct.Rename, key, name);

    private static string Quoted(string value)
    {
        var text = new StringBuilder("\"");
        foreach (char c in value)
        {
            text.Append(c switch
            {
                '"' => "\\\"",
                '\\' => "\\\\",
                < ' ' or '\u007F' => string.Create(CultureInfo.InvariantCulture, $"\\u{(int)c:X4}"),
                _ => c.ToString(),
            });
        }

        return text.Append('"').ToString();
    }
}
