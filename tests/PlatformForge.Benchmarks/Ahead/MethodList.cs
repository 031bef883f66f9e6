using System.Reflection;
using System.Reflection.Emit;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;

namespace PlatformForge.Benchmarks.Ahead;

/// <summary>
/// Writes the file by which the framework's ahead-of-time compiler is told methods (option --mibc): a library whose method AssemblyDictionary names the
/// libraries that the list is for and a method; that one loads the token of
/// each method that is listed and lets go of it. The layout is told in the compiler's own sources (MIbcProfileParser, dotnet/runtime). Nothing of it is ever
/// run.
/// </summary>
internal static class MethodList
{
    private const string ListName = "Methods", Libraries = "PlatformForge;";

    private const byte NewObject = 0x73, LoadToken = 0xD0, Pop = 0x26;

    /// <summary>An instruction with its token, and the one that lets go of it.</summary>
    private const int EntryLength = 6;

    /// <summary>Writes the list.</summary>
    public static void Write(string path, IReadOnlyList<MethodBase> methods)
    {
        var assembly = new PersistedAssemblyBuilder(new AssemblyName("methods"), typeof(object).Assembly);
        var module = assembly.DefineDynamicModule("methods");
        var list = Global(module, ListName);
        var code = list.GetILGenerator();
        foreach (var method in methods)
        {
            Name(code, method);
            code.Emit(OpCodes.Pop);
        }

        code.Emit(OpCodes.Ret);
        var dictionary = Global(module, "AssemblyDictionary").GetILGenerator();
        dictionary.Emit(OpCodes.Ldstr, Libraries);
        dictionary.Emit(OpCodes.Ldtoken, list);
        dictionary.Emit(OpCodes.Pop);
        dictionary.Emit(OpCodes.Ret);
        module.CreateGlobalFunctions();
        using var written = new MemoryStream();
        assembly.Save(written);
        byte[] bytes = written.ToArray();
        LoadConstructors(bytes);
        File.WriteAllBytes(path, bytes);
    }

    private static MethodBuilder Global(ModuleBuilder module, string name) =>
        module.DefineGlobalMethod(name, MethodAttributes.Public | MethodAttributes.Static, typeof(void), Type.EmptyTypes);

    // The framework's writer takes no constructor's token; it writes a call of the constructor, of the same length, which LoadConstructors turns into what is
    // wanted.
    private static void Name(ILGenerator code, MethodBase method)
    {
        if (method is ConstructorInfo constructor)
        {
            code.Emit(OpCodes.Newobj, constructor);
        }
        else
        {
            code.Emit(OpCodes.Ldtoken, (MethodInfo)method);
        }
    }

    private static void LoadConstructors(byte[] library)
    {
        using var file = new PEReader(new MemoryStream(library));
        var metadata = file.GetMetadataReader();
        var list = metadata.MethodDefinitions.Select(metadata.GetMethodDefinition).First(m => metadata.StringComparer.Equals(m.Name, ListName));
        var section = file.PEHeaders.SectionHeaders[file.PEHeaders.GetContainingSectionIndex(list.RelativeVirtualAddress)];
        int header = list.RelativeVirtualAddress - section.VirtualAddress + section.PointerToRawData;
        // A method's body begins after a header of one byte or, as its two lowest bits tell, of twelve (ECMA-335, II.25.4).
        int code = header + ((library[header] & 3) == 3 ? 12 : 1), length = file.GetMethodBody(list.RelativeVirtualAddress).GetILBytes()!.Length;
        for (int at = code; at < code + length - 1; at += EntryLength)
        {
            if (library[at] is not (NewObject or LoadToken) || library[at + EntryLength - 1] != Pop)
            {
                throw new InvalidOperationException("The list of methods is not laid out as it was written.");
            }

            library[at] = LoadToken;
        }
    }
}
