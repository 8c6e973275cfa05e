import { crc32 } from 'node:zlib';

/** A zip of text files, stored without compression, from APPNOTE 6.3.9 sections 4.3.7, 4.3.12 and 4.3.16. */
export function storedZip(files: Readonly<Record<string, string>>): Buffer {
  const locals: Buffer[] = [];
  const central: Buffer[] = [];
  let offset = 0;
  for (const [name, content] of Object.entries(files)) {
    const data = Buffer.from(content);
    const title = Buffer.from(name);
    const facts = Buffer.alloc(26);
    facts.writeUInt16LE(20, 0);
    facts.writeUInt32LE(crc32(data), 10);
    facts.writeUInt32LE(data.length, 14);
    facts.writeUInt32LE(data.length, 18);
    facts.writeUInt16LE(title.length, 22);
    const local = Buffer.concat([Buffer.from('PK\x03\x04', 'latin1'), facts, title, data]);
    const after = Buffer.alloc(14);
    after.writeUInt32LE(offset, 10);
    central.push(Buffer.concat([Buffer.from('PK\x01\x02\x14\x00', 'latin1'), facts, after, title]));
    locals.push(local);
    offset += local.length;
  }
  const directory = Buffer.concat(central);
  const end = Buffer.alloc(22);
  end.write('PK\x05\x06', 0, 'latin1');
  end.writeUInt16LE(central.length, 8);
  end.writeUInt16LE(central.length, 10);
  end.writeUInt32LE(directory.length, 12);
  end.writeUInt32LE(offset, 16);
  return Buffer.concat([...locals, directory, end]);
}
