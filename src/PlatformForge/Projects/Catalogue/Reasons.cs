namespace PlatformForge.Projects.Catalogue;

/// <summary>Why messages of a code offer no value to take, where several codes share the reason.</summary>
internal static class Reasons
{
    public const string File = "The file itself is at fault, and no key in it.";

    public const string Option = "It speaks of an option of the command, not of a key.";

    public const string Measured = "Only another look at the track tells the right figure.";

    public const string Rebuilt = "What was built is at fault, and no key: it is built again.";

    public const string Folder = "It speaks of a folder, not of a key.";

    public const string Note = "Nothing has to change.";

    public const string Several = "Several things can give way, and which of them is the user's to choose.";

    public const string Caller = "The project file cannot say such a thing; it guards the library against its callers.";
}
